// What an operator's command is, and what it may touch. Only main.ts knows the process.
import type { Readable } from 'node:stream';

/** 0 done · 1 the answer is no · 2 used wrongly. */
export type ExitCode = 0 | 1 | 2;

export interface Terminal {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly nowMs: number;
  readonly stdin: Readable & { readonly isTTY?: boolean; setRawMode?(on: boolean): unknown };
  /** Writes text to stdout as it is; waits for a slow reader. */
  write(text: string): Promise<void>;
  /** Writes a question or a remark to stderr, so that stdout stays clean. */
  ask(text: string): void;
  /** True when stderr is a terminal: somebody watches. */
  readonly isWatched: boolean;
}

export interface Command {
  /** What `--help` prints. */
  readonly usage: string;
  /** Throws a Problem when it is used wrongly or cannot be done; its message is the one line on stderr. */
  run(args: readonly string[], terminal: Terminal): Promise<ExitCode>;
}

/** Prints the one JSON value of `--json`, or the lines for a reader. */
export async function print(
  terminal: Terminal,
  json: boolean,
  value: unknown,
  lines: readonly string[],
): Promise<void> {
  await terminal.write(json ? `${JSON.stringify(value, null, 2)}\n` : lines.map((line) => `${line}\n`).join(''));
}
