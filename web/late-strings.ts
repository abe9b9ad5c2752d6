// The words of the reader's language for pages whose code is fetched later: those of every page, and their own. What is loaded at the start must
// not import this; its words would not be there.
import { type CoreWords, words as core } from './strings.ts';
import type { lateEnglish } from './words/en/late-english.ts';

export type LateWords = typeof lateEnglish;
export type Words = CoreWords & LateWords;

/** Set by `speakLate` before any late page is loaded, so that a module may keep parts of them. */
export let words: Words;

/** Adds the late words to those that are spoken. Only for `late-pages.ts`, and for tests. */
export function speakLate(chosen: LateWords): void {
  words = { ...core, ...chosen };
}
