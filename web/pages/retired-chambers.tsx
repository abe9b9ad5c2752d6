// Chambers out of use, each of which can be brought back; its batches and their records are there all the time.
import type { RetiredChamber } from '../../shared/api/chambers.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { loadEverything } from '../live.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { Section } from '../parts/section.tsx';
import { useLoad } from '../parts/use-load.ts';
import { zone } from '../session.ts';
import { shortDate } from '../when.ts';

const { retired: say } = words;

interface ItemProps {
  readonly chamber: RetiredChamber;
  readonly onChanged: () => void;
}

function Item({ chamber: { id, name, retiredAt }, onChanged }: ItemProps) {
  // Its name may be another chamber's by now: then the form says so and takes another.
  const send = async (fields: FormData) => {
    const wanted = textOf(fields, 'name');
    await calls.bringBackChamber(id, wanted);
    showNote(say.back(wanted));
    onChanged();
    await loadEverything();
  };
  return (
    <li>
      <span>{say.line(name, shortDate(retiredAt, zone.value))}</span>
      <Disclosure title={say.act} label={say.actFor(name)}>
        {(close) => (
          <Form onSend={send} act={say.act} onCancel={close} label={say.actFor(name)}>
            <Field name="name" label={words.chamber.newName} hint={say.hint} value={name} required autoComplete="off" />
          </Form>
        )}
      </Disclosure>
    </li>
  );
}

export function RetiredChambers() {
  const retired = useLoad(calls.retiredChambers, 'retired');
  return (
    <Section id="retired" title={say.title}>
      <p>{say.why}</p>
      {retired.data === undefined && <LoadState {...retired} />}
      {retired.data?.length === 0 && <p class="quiet-line">{say.none}</p>}
      <ul class="plain-list is-acted">
        {retired.data?.map((chamber) => (
          <Item key={chamber.id} chamber={chamber} onChanged={retired.reload} />
        ))}
      </ul>
    </Section>
  );
}
