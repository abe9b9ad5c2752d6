// How somebody is told, as fields: address, number, and the hours in which what can wait is to wait. For oneself, and for a manager.
import type { Person } from '../../shared/api/session.ts';
import { words } from '../late-strings.ts';
import { Field } from './fields.tsx';
import { textOf } from './form.tsx';

const { duty: say } = words;

/** What was entered; an empty field takes away what is known. */
export function contactOf(fields: FormData): Pick<Person, 'email' | 'phoneNumber' | 'quietFrom' | 'quietTo'> {
  const text = (name: string) => textOf(fields, name) || null;
  return {
    email: text('email'),
    phoneNumber: text('phoneNumber')?.replaceAll(' ', '') ?? null,
    quietFrom: text('quietFrom'),
    quietTo: text('quietTo'),
  };
}

interface Props {
  readonly person: Person;
  /** Their own: the browser may fill in what it knows of whoever sits before it. */
  readonly isMine: boolean;
}

export function ContactFields({ person, isMine }: Props) {
  const fill = (what: 'email' | 'tel') => (isMine ? what : 'off');
  return (
    <>
      <Field name="email" label={say.email} type="email" value={person.email ?? ''} autoComplete={fill('email')} />
      <Field
        name="phoneNumber"
        label={say.phoneNumber}
        hint={say.phoneNumberHint}
        type="tel"
        value={person.phoneNumber ?? ''}
        autoComplete={fill('tel')}
      />
      <div class="field-pair">
        <Field name="quietFrom" label={say.quietFrom} type="time" value={person.quietFrom ?? ''} />
        <Field name="quietTo" label={say.quietTo} type="time" value={person.quietTo ?? ''} />
      </div>
      <p class="details">{say.quietHint}</p>
    </>
  );
}
