// Fetches the words of the reader's language. Each language is two files of its own, so that nobody loads two languages, and nobody the words of a
// page before it is opened.
import type { Language } from '../shared/languages.ts';
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

/** What every page says; before the first of them is loaded. */
export async function loadWords(): Promise<void> {
  speak(await atStart[readerLanguage]());
}

/** What the late pages say besides; before the first of those is loaded. Rejects when it cannot be had. */
export async function loadLateWords(): Promise<void> {
  speakLate(await late[readerLanguage]());
}
