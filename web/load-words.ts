// Fetches the words of the reader's language. Each language is two files of its own, so that nobody loads two languages, and nobody the words of a
// page before it is opened.
import { type Language, languages } from '../shared/languages.ts';
import { speakLate } from './late-strings.ts';
import { readerLanguage } from './reader-language.ts';
import { speak } from './strings.ts';

const atStart = {
  en: () => import('./words/en/english.ts').then(({ english }) => english),
  nl: () => import('./words/nl/dutch.ts').then(({ dutch }) => dutch),
  es: () => import('./words/es/spanish.ts').then(({ spanish }) => spanish),
} satisfies Record<Language, unknown>;

const late = {
  en: () => import('./words/en/late-english.ts').then(({ lateEnglish }) => lateEnglish),
  nl: () => import('./words/nl/late-dutch.ts').then(({ lateDutch }) => lateDutch),
  es: () => import('./words/es/late-spanish.ts').then(({ lateSpanish }) => lateSpanish),
} satisfies Record<Language, unknown>;

/** Which words are spoken, once some are. */
let spoken: Language = readerLanguage;

/**
 * What every page says; before the first of them is loaded. Gives the language: another than the reader's where that was chosen without a connection,
 * since the device keeps no words that nobody read on it. Rejects when none can be had.
 */
export async function loadWords(): Promise<Language> {
  const others = languages.filter((one) => one !== readerLanguage);
  for (const language of [readerLanguage, ...others]) {
    try {
      speak(await atStart[language]());
      spoken = language;
      return language;
    } catch (problem) {
      if (!(problem instanceof TypeError) || language === others.at(-1)) throw problem;
    }
  }
  return spoken;
}

/** What the late pages say besides; before the first of those is loaded. Rejects when it cannot be had. */
export async function loadLateWords(): Promise<void> {
  speakLate(await late[spoken]());
}
