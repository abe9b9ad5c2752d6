// The one error class for everything a person or a program may be told about.
// It knows no HTTP status and no exit code: the edges translate `code`.

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

/** An expected failure: `message` is one plain sentence that says what is wrong and what to do. */
export class Problem extends Error {
  readonly code: ProblemCode;
  /** Where in the input the fault lies, as JSON Pointers or field names; empty when it lies nowhere in particular. */
  readonly faults: readonly Fault[];

  constructor(code: ProblemCode, message: string, options: { cause?: unknown; faults?: readonly Fault[] } = {}) {
    super(message, { cause: options.cause });
    this.name = 'Problem';
    this.code = code;
    this.faults = options.faults ?? [];
  }
}

/** One fault and its place in the input. */
export interface Fault {
  readonly where: string;
  readonly reason: string;
}
