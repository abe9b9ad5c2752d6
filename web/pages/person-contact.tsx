// How another person is told, entered by a manager: not everybody looks after it themselves.

import type { Person } from '../../shared/api/session.ts';
import { isLanguage } from '../../shared/languages.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { ContactFields, contactOf } from '../parts/contact-fields.tsx';
import { Choice } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import { languageOptions } from '../parts/language-choice.tsx';
import { session } from '../session.ts';

const { people: say, myLanguage, settings } = words;

interface Props {
  readonly person: Person;
  readonly close: () => void;
  readonly onChanged: () => void;
}

export function PersonContact({ person, close, onChanged }: Props) {
  const send = async (fields: FormData) => {
    const [language, unit] = [textOf(fields, 'language'), textOf(fields, 'temperatureUnit')];
    await calls.changePerson(person.id, {
      ...contactOf(fields),
      language: isLanguage(language) ? language : null,
      temperatureUnit: unit === '°C' || unit === '°F' ? unit : null,
    });
    showNote(say.toldSaved(person.name));
    onChanged();
    close();
  };
  const site = session.value?.temperatureUnit ?? '°C';
  const units = [['', myLanguage.asSite(site)], ...Object.entries(settings.units)] as const;
  const languages = [['', say.ownLanguage], ...languageOptions] as const;
  return (
    <Form onSend={send} act={myLanguage.save} onCancel={close} label={say.toldFor(person.name)}>
      <ContactFields person={person} isMine={false} />
      <Choice name="language" label={words.language.label} value={person.language ?? ''} options={languages} />
      <Choice name="temperatureUnit" label={myLanguage.unit} value={person.temperatureUnit ?? ''} options={units} />
    </Form>
  );
}
