// How the one who is signed in is told.
import type { Person } from '../../shared/api/session.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { ContactFields, contactOf } from '../parts/contact-fields.tsx';
import { Form } from '../parts/form.tsx';
import { Section } from '../parts/section.tsx';
import { loadSession } from '../session.ts';

const { duty: say } = words;

export function MyContact({ me }: { readonly me: Person }) {
  const send = async (fields: FormData) => {
    await calls.changeMe(contactOf(fields));
    showNote(say.mineSaved);
    await loadSession();
  };
  return (
    <Section id="mine" title={say.mine}>
      <Form onSend={send} act={say.saveMine} label={say.mine}>
        <ContactFields person={me} isMine={true} />
      </Form>
    </Section>
  );
}
