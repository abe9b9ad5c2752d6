// The file of a command line; `-` is standard input.
import { readFile } from 'node:fs/promises';
import { buffer } from 'node:stream/consumers';
import { Problem } from '../../shared/problem.ts';
import type { Terminal } from './command.ts';

/** The whole content. Problem `bad-input` when it cannot be read. */
export async function readInput(path: string, { stdin }: Pick<Terminal, 'stdin'>): Promise<Uint8Array> {
  if (path === '-') return buffer(stdin);
  try {
    return await readFile(path);
  } catch (cause) {
    throw Problem.forOperator('bad-input', `The file ${path} cannot be read (${codeOf(cause)}).`, { cause });
  }
}

/** The system's short word for what went wrong with a file: ENOENT, EACCES, … */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}
