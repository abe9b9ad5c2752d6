// The type that every language of the shared catalogue has.
import type { english } from './en/english.ts';

export type SharedWords = typeof english;

/** A sentence that is said in whatever language its hearer has: `(say) => say.problems.noSuchBatch`. */
export type Say = (words: SharedWords) => string;
