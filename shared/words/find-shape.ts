// What a schema says of a field, in every language: a schema carries the English words, and the others are found by them.
import { shapes } from './en/shapes.ts';
import type { Say, SharedWords } from './shared-words.ts';

type ShapeName = keyof SharedWords['shapes'];

const names = new Map(Object.entries(shapes).map(([name, text]) => [text, name as ShapeName]));

/** What says it, from its English words; null where they are not ours but the library's. */
export function findShape(english: string): Say | null {
  const name = names.get(english);
  return name === undefined ? null : (words) => words.shapes[name];
}
