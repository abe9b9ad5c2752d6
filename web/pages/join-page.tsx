// Taking up an invitation: its link carries the secret behind the #, the one who joins chooses name and password.
import { useRef, useState } from 'preact/hooks';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { goTo } from '../navigation.ts';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { loadSession, person, session } from '../session.ts';

function secretIn(hash: string): string {
  return new URLSearchParams(hash.slice(1)).get('invitation') ?? '';
}

/** Asking again would not help; whoever took it up before is looking for the sign-in. */
function Useless({ why }: { readonly why: string }) {
  return (
    <>
      <p class="problem" role="alert">
        {why}
      </p>
      <p>
        <a class="button" href="/">
          {words.signIn.title}
        </a>
      </p>
    </>
  );
}

function Welcome({ secret }: { readonly secret: string }) {
  const invitation = useLoad(() => calls.lookAtInvitation(secret), secret);
  const isAccepted = useRef(false);
  const join = async (fields: FormData) => {
    const name = textOf(fields, 'name');
    const password = String(fields.get('password') ?? '');
    // Where only the sign-in after it failed, it is the sign-in that is tried again.
    if (!isAccepted.current) await calls.acceptInvitation(secret, name, password);
    isAccepted.current = true;
    await calls.signIn(name, password);
    history.replaceState(null, '', '/join');
    await loadSession();
    goTo('/');
  };
  if (invitation.problem?.status === 404) return <Useless why={invitation.problem.message} />;
  if (invitation.data === undefined) return <LoadState {...invitation} />;
  const { name, role } = invitation.data;
  return (
    <>
      <p>{words.join.as(session.value?.siteName ?? '', words.roles[role].toLowerCase())}</p>
      <p>{words.join.means[role]}</p>
      {person.value !== null && <p class="problem">{words.join.signedIn(person.value.name)}</p>}
      <Form onSend={join} act={words.join.act}>
        <Field name="name" label={words.join.name} value={name} autoComplete="username" required />
        <Field
          name="password"
          label={words.join.password}
          hint={words.people.passwordHint}
          type="password"
          autoComplete="new-password"
          required
        />
      </Form>
    </>
  );
}

export function JoinPage() {
  const [secret] = useState(() => secretIn(location.hash));
  return (
    <main id="main" class="gate">
      <p class="brand">{words.product}</p>
      <PageHead title={words.join.title} />
      {secret === '' ? <p class="problem">{words.join.noSecret}</p> : <Welcome secret={secret} />}
    </main>
  );
}
