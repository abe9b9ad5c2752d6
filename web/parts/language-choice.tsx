// The choice of the language of this page, where nobody has signed in yet.
import { isLanguage, languageNames, languages } from '../../shared/languages.ts';
import { readerLanguage, readIn } from '../reader-language.ts';
import { words } from '../strings.ts';
import { Choice } from './fields.tsx';

/** Each language by its own name. */
export const languageOptions = languages.map((one) => [one, languageNames[one]] as const);

/** Changes at once: the page is loaded anew in the language that was chosen. */
export function LanguageChoice() {
  return (
    <div class="language">
      <Choice
        name="language"
        label={words.language.label}
        value={readerLanguage}
        options={languageOptions}
        onChoose={(tag) => {
          if (isLanguage(tag)) readIn(tag);
        }}
      />
    </div>
  );
}
