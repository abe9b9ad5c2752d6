// What strings.ts is in the built page: the same words, empty until the reader's language has been loaded (see `wordsApart` in vite.config.ts).
import type { Words } from './strings.ts';

export type { Words } from './strings.ts';

export let words: Words;

export function speak(chosen: Words): void {
  words = chosen;
}
