// The words of the reader's language that every page has. No other file of web/ may hold text meant for people: it stands in words/<language>/.
import type { english } from './words/en/english.ts';

export type CoreWords = typeof english;

/** Set by `speak` before any page is loaded, so that a module may keep parts of them. */
export let words: CoreWords;

/** Sets what `words` are. Only for the start of the page, and for tests. */
export function speak(chosen: CoreWords): void {
  words = chosen;
}

/** "1 day", "3 days": a count with its noun, as all our languages put it. It stands here to be in no file of its own beside those of the words. */
export const many = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`;
