// Why something was refused, as data: a sentence of the catalogue by its name, and what it is about. It can be stored as JSON and said later, in
// whatever language its reader has (say-refusal.ts).
import type { refusals } from '../words/en/refusals.ts';

export type ReasonKey = keyof typeof refusals;

/** Text is said as it is, a finite number with the decimal mark of the language, a reason as a part of the sentence. */
export type ReasonPart = string | number | Reason;

export interface Reason {
  readonly key: ReasonKey;
  readonly parts: readonly ReasonPart[];
}

/** What the sentence is about: as much as the catalogue's function takes. */
type PartsOf<Key extends ReasonKey> = (typeof refusals)[Key] extends (...said: infer Said extends string[]) => string
  ? { readonly [Index in keyof Said]: ReasonPart }
  : readonly [];

/** A reason: a sentence by its name, and what is put into it. */
export function because<Key extends ReasonKey>(key: Key, ...parts: PartsOf<Key>): Reason {
  return { key, parts };
}
