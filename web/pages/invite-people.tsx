// Inviting people by a link: making one, and those that nobody has used yet.
import { useState } from 'preact/hooks';
import type { CreatedInvitation, InvitationView } from '../../shared/api/invitations.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { Section } from '../parts/section.tsx';
import { ShareLink } from '../parts/share-link.tsx';
import { useLoad } from '../parts/use-load.ts';
import { zone } from '../session.ts';
import { dayAndTime } from '../when.ts';
import { asRole, roleOptions } from './person-item.tsx';

/** Behind the #: a browser keeps that part to itself, so that the secret is in no log on the way. */
export function invitationAddress(origin: string, secret: string): string {
  return `${origin}/join#invitation=${secret}`;
}

function Waiting({ list, onChanged }: { readonly list: readonly InvitationView[]; readonly onChanged: () => void }) {
  if (list.length === 0) return null;
  return (
    <>
      <h3>{words.invite.waiting}</h3>
      <ul class="plain-list is-acted">
        {list.map(({ id, name, role, expiresAt }) => (
          <li key={id}>
            {words.invite.line(name, words.roles[role], dayAndTime(Date.parse(expiresAt), slowNowMs.value, zone.value))}{' '}
            <ActButton
              kind="quiet"
              work={() => calls.withdrawInvitation(id)}
              done={words.invite.withdrawn}
              onDone={onChanged}
              label={words.invite.withdrawThis(name)}
            >
              {words.invite.withdraw}
            </ActButton>
          </li>
        ))}
      </ul>
    </>
  );
}

export function InvitePeople() {
  const waiting = useLoad(calls.invitations, 'invitations');
  const [made, setMade] = useState<CreatedInvitation>();
  const send = (close: () => void) => async (fields: FormData) => {
    setMade(await calls.invite(textOf(fields, 'name'), asRole(textOf(fields, 'role'))));
    close();
    waiting.reload();
  };
  return (
    <Section id="invite" title={words.invite.title}>
      <p>{words.invite.why}</p>
      <div class="acts">
        <Disclosure title={words.invite.act}>
          {(close) => (
            <Form onSend={send(close)} act={words.invite.act} onCancel={close} label={words.invite.title}>
              <Field name="name" label={words.invite.name} hint={words.invite.nameHint} autoComplete="off" />
              <Choice name="role" label={words.people.role} value="crew" options={roleOptions} />
            </Form>
          )}
        </Disclosure>
      </div>
      {made !== undefined && (
        <ShareLink
          what={words.invite.link}
          address={invitationAddress(location.origin, made.secret)}
          hint={words.invite.once}
        />
      )}
      <Waiting list={waiting.data ?? []} onChanged={waiting.reload} />
    </Section>
  );
}
