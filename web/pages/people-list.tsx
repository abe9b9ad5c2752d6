// Everyone who can sign in, with role, new password and removal; and a form for one more.
import type { Person } from '../../shared/api/session.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { asRole, PersonItem, roleOptions } from './person-item.tsx';

const { people: say } = words;

function AddPerson({ onChanged }: { readonly onChanged: () => void }) {
  const send = (close: () => void) => async (fields: FormData) => {
    const name = textOf(fields, 'name');
    await calls.addPerson(name, asRole(textOf(fields, 'role')), String(fields.get('password') ?? ''));
    showNote(say.added(name));
    close();
    onChanged();
  };
  return (
    <Disclosure title={say.add}>
      {(close) => (
        <Form onSend={send(close)} act={say.add} onCancel={close}>
          <Field name="name" label={say.name} required autoComplete="off" />
          <Choice name="role" label={say.role} value="crew" options={roleOptions} />
          <Field
            name="password"
            label={say.password}
            hint={say.passwordHint}
            type="password"
            autoComplete="new-password"
            required
          />
        </Form>
      )}
    </Disclosure>
  );
}

export function PeopleList({
  people,
  onChanged,
}: {
  readonly people: readonly Person[];
  readonly onChanged: () => void;
}) {
  return (
    <>
      <p>{say.rolesMean}</p>
      <ul class="person-list">
        {people.map((person) => (
          <PersonItem key={person.id} person={person} onChanged={onChanged} />
        ))}
      </ul>
      <AddPerson onChanged={onChanged} />
    </>
  );
}
