// The types that every language of the shared catalogue has.
import type { english } from './en/english.ts';
import type { said } from './en/said.ts';

/** All that the service says. */
export type SharedWords = typeof english;

/** Of that, what the page says too. */
export type SaidWords = typeof said;

/** A sentence that is said in whatever language its hearer has: `(say) => say.problems.noSuchBatch`. */
export type Say = (words: SharedWords) => string;
