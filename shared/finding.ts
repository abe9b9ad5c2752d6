// What a part of the service found (what became of sending, what is wrong) as data: a text of the catalogue by its key, with what goes into it,
// so that each reader is told in their own language, also later. Words of another side (host names, codes, errors) are arguments, as they came.
import type { SaidWords } from './words/shared-words.ts';

type FindingTexts = SaidWords['findings'];
export type FindingKey = keyof FindingTexts;

/** Plain JSON; stored with what it is about. */
export type Finding = {
  readonly [Key in FindingKey]: { readonly key: Key; readonly args: Readonly<Parameters<FindingTexts[Key]>> };
}[FindingKey];

/** One that somebody else wrote, perhaps a later version. */
export interface GivenFinding {
  readonly key: string;
  readonly args: readonly (string | number)[];
}

type FindingOf<Key extends FindingKey> = Extract<Finding, { readonly key: Key }>;

export function finding<Key extends FindingKey>(key: Key, ...args: Parameters<FindingTexts[Key]>): FindingOf<Key> {
  return { key, args } as unknown as FindingOf<Key>;
}

/** As it comes from the store or over the wire; what these words have no text for is told as `text`. */
export function readFinding(given: GivenFinding | null, text: string, words: Pick<SaidWords, 'findings'>): Finding {
  return given !== null && Object.hasOwn(words.findings, given.key) ? (given as Finding) : finding('asWritten', text);
}

/** A clause such as "push.example refuses the connection: is it running?", to stand in a sentence. */
export function sayFinding({ key, args }: Finding, { findings }: Pick<SaidWords, 'findings'>): string {
  // Key and arguments belong together by their type; the compiler loses that when both are taken apart.
  return (findings[key] as (...given: readonly (string | number)[]) => string)(...args);
}

/** The same as a sentence of its own. */
export function sayWholeFinding(found: Finding, words: Pick<SaidWords, 'findings'>): string {
  const text = sayFinding(found, words);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.?!]$/.test(text) ? '' : '.'}`;
}
