// The language and the unit of the one who is signed in: of every page and of what their phone is told.
import { isLanguage } from '../../shared/languages.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { Choice } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { languageOptions } from '../parts/language-choice.tsx';
import { Section } from '../parts/section.tsx';
import { readerLanguage } from '../reader-language.ts';
import { loadSession, person, session } from '../session.ts';

const { myLanguage: say, settings } = words;

async function save(fields: FormData): Promise<void> {
  const [language, unit] = [textOf(fields, 'language'), textOf(fields, 'temperatureUnit')];
  await calls.changeMyself({
    ...(isLanguage(language) && { language }),
    temperatureUnit: unit === '°C' || unit === '°F' ? unit : null,
  });
  // Another language loads the page anew here.
  await loadSession();
  showNote(say.saved);
}

export function MyLanguage() {
  const me = person.value;
  if (me === null) return null;
  const units = [['', say.asSite(session.value?.temperatureUnit ?? '°C')], ...Object.entries(settings.units)] as const;
  return (
    <Section id="my-language" title={say.title}>
      <Form onSend={save} act={say.save} label={say.title}>
        <Choice
          name="language"
          label={words.language.label}
          hint={say.hint}
          value={me.language ?? readerLanguage}
          options={languageOptions}
        />
        <Choice name="temperatureUnit" label={say.unit} value={me.temperatureUnit ?? ''} options={units} />
      </Form>
    </Section>
  );
}
