// How the one who is signed in is told: address, number, and the hours in which what can wait is to wait.
import type { Person } from '../../shared/api/session.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { Section } from '../parts/section.tsx';
import { loadSession } from '../session.ts';

const { duty: say } = words;

export function MyContact({ me }: { readonly me: Person }) {
  const send = async (fields: FormData) => {
    const text = (name: string) => textOf(fields, name) || null;
    await calls.changeMe({
      email: text('email'),
      phoneNumber: text('phoneNumber')?.replaceAll(' ', '') ?? null,
      quietFrom: text('quietFrom'),
      quietTo: text('quietTo'),
    });
    showNote(say.mineSaved);
    await loadSession();
  };
  return (
    <Section id="mine" title={say.mine}>
      <Form onSend={send} act={say.saveMine} label={say.mine}>
        <Field name="email" label={say.email} type="email" value={me.email ?? ''} autoComplete="email" />
        <Field
          name="phoneNumber"
          label={say.phoneNumber}
          hint={say.phoneNumberHint}
          type="tel"
          value={me.phoneNumber ?? ''}
          autoComplete="tel"
        />
        <div class="field-pair">
          <Field name="quietFrom" label={say.quietFrom} type="time" value={me.quietFrom ?? ''} />
          <Field name="quietTo" label={say.quietTo} type="time" value={me.quietTo ?? ''} />
        </div>
        <p class="details">{say.quietHint}</p>
      </Form>
    </Section>
  );
}
