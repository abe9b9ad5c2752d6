// One person in the list: role, how they are told, new password, removal. Nobody can take away their own role.
import type { Person, Role } from '../../shared/api/session.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { doAct } from '../parts/act.ts';
import { ActButton } from '../parts/act-button.tsx';
import { Disclosure, Sure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form } from '../parts/form.tsx';
import { person as signedIn } from '../session.ts';
import { PersonContact } from './person-contact.tsx';

const { people: say } = words;
export const roleOptions = Object.entries(words.roles);

interface ItemProps {
  readonly person: Person;
  readonly onChanged: () => void;
}

/** The role a choice stands for. */
export function asRole(text: string): Role {
  return text === 'manager' || text === 'crew' ? text : 'viewer';
}

function RoleChoice({ person, onChanged }: ItemProps) {
  const change = async (role: Role) => {
    await doAct(() => calls.changePerson(person.id, { role }), say.roleChanged(person.name, words.roles[role]));
    onChanged();
  };
  return (
    <Choice
      key={person.role}
      name="role"
      label={say.roleOf(person.name)}
      value={person.role}
      options={roleOptions}
      isLabelHidden={true}
      onChoose={(role) => void change(asRole(role))}
    />
  );
}

function NewPassword({ person, close }: { readonly person: Person; readonly close: () => void }) {
  const send = async (fields: FormData) => {
    await calls.changePerson(person.id, { password: String(fields.get('password') ?? '') });
    showNote(say.passwordSet(person.name));
    close();
  };
  return (
    <Form onSend={send} act={say.setPassword} onCancel={close} label={say.setPasswordFor(person.name)}>
      <Field
        name="password"
        label={say.newPassword}
        hint={say.passwordHint}
        type="password"
        autoComplete="new-password"
        required
      />
    </Form>
  );
}

export function PersonItem({ person, onChanged }: ItemProps) {
  const isMe = person.id === signedIn.value?.id;
  return (
    <li class="person">
      <h3>
        {person.name} {isMe && <small>({say.you})</small>}
      </h3>
      {isMe ? (
        <p class="person-role">{words.roles[person.role]}</p>
      ) : (
        <RoleChoice person={person} onChanged={onChanged} />
      )}
      <div class="person-acts">
        {!isMe && (
          <Disclosure title={say.told} label={say.toldFor(person.name)}>
            {(close) => <PersonContact person={person} close={close} onChanged={onChanged} />}
          </Disclosure>
        )}
        <Disclosure title={say.setPassword} label={say.setPasswordFor(person.name)}>
          {(close) => <NewPassword person={person} close={close} />}
        </Disclosure>
        {!isMe && (
          <Disclosure title={say.remove} label={say.removeFor(person.name)}>
            {(close) => (
              <Sure
                question={say.removeSure(person.name)}
                yes={
                  <>
                    <ActButton
                      kind="main"
                      work={() => calls.removePerson(person.id)}
                      done={say.removed(person.name)}
                      onDone={onChanged}
                    >
                      {say.remove}
                    </ActButton>
                    <button type="button" class="plain" onClick={close}>
                      {words.acts.cancel}
                    </button>
                  </>
                }
              />
            )}
          </Disclosure>
        )}
      </div>
    </li>
  );
}
