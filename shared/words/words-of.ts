// The shared catalogue of each language. For the service, which speaks them all; the page loads the one it needs.
import type { Language } from '../languages.ts';
import { english } from './en/english.ts';
import { spanish } from './es/spanish.ts';
import { dutch } from './nl/dutch.ts';
import type { SharedWords } from './shared-words.ts';

export const wordsOf: Readonly<Record<Language, SharedWords>> = { en: english, nl: dutch, es: spanish };
