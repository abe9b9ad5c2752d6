// Adds a chamber: only its name is asked.
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { loadEverything } from '../live.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { words } from '../strings.ts';

export function AddChamberForm({ onDone }: { readonly onDone?: () => void }) {
  const send = async (fields: FormData) => {
    const name = textOf(fields, 'name');
    await calls.addChamber(name);
    await loadEverything();
    showNote(words.firstSteps.chamberDone(name));
    onDone?.();
  };
  return (
    <Form
      onSend={send}
      act={words.firstSteps.addChamber}
      clears={true}
      label={words.firstSteps.chamber}
      {...(onDone === undefined ? {} : { onCancel: onDone })}
    >
      <Field
        name="name"
        label={words.firstSteps.chamberName}
        hint={words.firstSteps.chamberExample}
        required
        autoComplete="off"
      />
    </Form>
  );
}

export function AddChamber() {
  return <Disclosure title={words.chamber.addAnother}>{(close) => <AddChamberForm onDone={close} />}</Disclosure>;
}
