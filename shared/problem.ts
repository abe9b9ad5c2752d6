// The one error class for everything a person or a program may be told about.
// It knows no HTTP status and no exit code: the edges translate `code`.
import { english } from './words/en/english.ts';
import type { Say, SharedWords } from './words/shared-words.ts';

export type ProblemCode =
  | 'bad-input'
  | 'not-found'
  | 'not-signed-in'
  | 'not-allowed'
  | 'conflict'
  | 'too-many'
  | 'bad-setting'
  | 'store-unavailable'
  | 'store-full'
  | 'store-too-new'
  | 'port-in-use'
  | 'unavailable';

interface ProblemDetails {
  readonly cause?: unknown;
  readonly faults?: readonly Fault[];
}

/** An expected failure: one plain sentence that says what is wrong and what to do, in the language of whoever hears it. */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly #say: Say;
  /** Where in the input the fault lies, as JSON Pointers or field names; empty when it lies nowhere in particular. */
  readonly faults: readonly Fault[];

  /** `say` picks the sentence from the catalogue; `message` is the English one, for the log and the command line. */
  constructor(code: ProblemCode, say: Say, details: ProblemDetails = {}) {
    super(say(english), { cause: details.cause });
    this.name = 'Problem';
    this.code = code;
    this.#say = say;
    this.faults = details.faults ?? [];
  }

  /** The sentence in the words of a language. */
  sayIn(words: SharedWords): string {
    return this.#say(words);
  }

  /** A problem that only whoever starts the program or types a command meets: it is said in English only. */
  static forOperator(code: ProblemCode, message: string, details: ProblemDetails = {}): Problem {
    return new Problem(code, () => message, details);
  }
}

/** One fault and its place in the input. */
export interface Fault {
  readonly where: string;
  readonly reason: Say;
}

/** A fault as it is told. */
export interface SaidFault {
  readonly where: string;
  readonly reason: string;
}

/** Faults in the words of a language. */
export function sayFaults(faults: readonly Fault[], words: SharedWords): SaidFault[] {
  return faults.map(({ where, reason }) => ({ where, reason: reason(words) }));
}
