// Links for screens on the wall: each is a read-only token behind the # of an address, and ends when its token is withdrawn.
import { useState } from 'preact/hooks';
import type { TokenView } from '../../shared/api/session.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { Section } from '../parts/section.tsx';
import { ShareLink } from '../parts/share-link.tsx';
import { useLoad } from '../parts/use-load.ts';
import { zone } from '../session.ts';
import { shortDate } from '../when.ts';

function InUse({ tokens, onChanged }: { readonly tokens: readonly TokenView[]; readonly onChanged: () => void }) {
  if (tokens.length === 0) return null;
  return (
    <>
      <h3>{words.wallLinks.list}</h3>
      <ul class="plain-list is-acted">
        {tokens.map(({ id, name, createdAt }) => (
          <li key={id}>
            {words.wallLinks.line(name, shortDate(createdAt, zone.value))}{' '}
            <ActButton
              kind="quiet"
              work={() => calls.removeToken(id)}
              done={words.wallLinks.removed(name)}
              onDone={onChanged}
              label={words.wallLinks.removeThis(name)}
            >
              {words.wallLinks.remove}
            </ActButton>
          </li>
        ))}
      </ul>
    </>
  );
}

export function WallLinks() {
  const tokens = useLoad(calls.tokens, 'tokens');
  const [token, setToken] = useState<string>();
  const send = (close: () => void) => async (fields: FormData) => {
    setToken((await calls.addToken(textOf(fields, 'name'))).token);
    close();
    tokens.reload();
  };
  return (
    <Section id="wall-links" title={words.wallLinks.title}>
      <p>{words.wallLinks.why}</p>
      <div class="acts">
        <Disclosure title={words.wallLinks.act}>
          {(close) => (
            <Form onSend={send(close)} act={words.wallLinks.act} onCancel={close} label={words.wallLinks.title}>
              <Field name="name" label={words.wallLinks.name} hint={words.wallLinks.nameExample} required />
            </Form>
          )}
        </Disclosure>
      </div>
      {token !== undefined && (
        <ShareLink
          what={words.wallLinks.link}
          address={`${location.origin}/wall#token=${token}`}
          hint={words.wallLinks.once}
        />
      )}
      <InUse tokens={(tokens.data ?? []).filter(({ scope }) => scope === 'read')} onChanged={tokens.reload} />
    </Section>
  );
}
