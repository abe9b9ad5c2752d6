// Signing in. The address asked for stays, so that one arrives where one wanted to go.
import { calls } from '../calls.ts';
import { goTo, route } from '../navigation.ts';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LanguageChoice } from '../parts/language-choice.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { loadSession, session } from '../session.ts';
import { words } from '../strings.ts';

export function SignInPage() {
  const send = async (fields: FormData) => {
    await calls.signIn(textOf(fields, 'name'), String(fields.get('password') ?? ''));
    await loadSession();
    if (route.value.page === 'sign-in' || route.value.page === 'set-up') goTo('/');
  };
  const site = session.value?.siteName ?? '';
  return (
    <main id="main" class="gate">
      <p class="brand">{words.product}</p>
      <PageHead title={words.signIn.title}>{site !== '' && <p>{site}</p>}</PageHead>
      {session.value?.demo === true && <p class="demo">{words.demo}</p>}
      {session.value?.needsSetup === true && <p class="problem">{words.signIn.needsSetup}</p>}
      <Form onSend={send} act={words.signIn.act}>
        <Field name="name" label={words.signIn.name} autoComplete="username" required />
        <Field name="password" label={words.signIn.password} type="password" autoComplete="current-password" required />
      </Form>
      <LanguageChoice />
    </main>
  );
}
