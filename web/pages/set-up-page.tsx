// The first manager. Works once, with the code the service printed.
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { goTo, route } from '../navigation.ts';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { LanguageChoice } from '../parts/language-choice.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { loadSession, person, session } from '../session.ts';

async function createManager(fields: FormData): Promise<void> {
  const name = textOf(fields, 'name');
  const password = String(fields.get('password') ?? '');
  await calls.setUp(textOf(fields, 'code'), name, password);
  await loadSession();
  if (person.value === null) {
    await calls.signIn(name, password);
    await loadSession();
  }
  goTo('/first-batch');
}

export function SetUpPage() {
  const isDone = session.value?.needsSetup === false;
  return (
    <main id="main" class="gate">
      <p class="brand">{words.product}</p>
      <PageHead title={words.setUp.title} />
      {isDone ? (
        <>
          <p>{words.setUp.doneAlready}</p>
          <a class="button" href="/sign-in">
            {words.setUp.toSignIn}
          </a>
        </>
      ) : (
        <>
          <p>{words.setUp.intro}</p>
          <Form onSend={createManager} act={words.setUp.act}>
            <Field
              name="code"
              label={words.setUp.code}
              hint={route.value.code === '' ? words.setUp.codeHint : words.setUp.codeTaken}
              value={route.value.code}
              autoComplete="off"
              required
            />
            <Field name="name" label={words.setUp.name} autoComplete="username" required />
            <Field
              name="password"
              label={words.setUp.password}
              hint={words.people.passwordHint}
              type="password"
              autoComplete="new-password"
              required
            />
          </Form>
          <LanguageChoice />
        </>
      )}
    </main>
  );
}
