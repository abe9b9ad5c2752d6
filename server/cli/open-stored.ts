// The store as a command meets it: the service may be running on the same file, so whoever only reads opens it for reading only.
import { existsSync } from 'node:fs';
import { Problem } from '../../shared/problem.ts';
import { databaseFile, readSettings } from '../settings.ts';
import { openStore, openStoreToRead } from '../store/open-store.ts';
import type { Store } from '../store/store.ts';
import type { Terminal } from './command.ts';

/** Runs `work` on the store of the data folder, opened for reading; null when there is no database yet. Closes it whatever happens. */
export async function readStored<T>(terminal: Terminal, work: (store: Store) => Promise<T>): Promise<T | null> {
  const file = fileOf(terminal);
  return existsSync(file) ? use(openStoreToRead(file), work) : null;
}

/** The same for a change. Problem `not-found` when there is no database: a command never makes one. */
export async function changeStored<T>(terminal: Terminal, work: (store: Store) => Promise<T>): Promise<T> {
  const file = fileOf(terminal);
  if (!existsSync(file)) throw noDatabase(file);
  return use(openStore({ file, nowMs: terminal.nowMs }), work);
}

/** What is said where a database is needed and there is none. */
export function noDatabase(file: string): Problem {
  return Problem.forOperator(
    'not-found',
    `There is no database at ${file}: start Takewell once, or set TAKEWELL_DATA_DIR.`,
  );
}

/** The database file of the data folder. Problem `bad-setting`. */
export function fileOf(terminal: Terminal): string {
  return databaseFile(readSettings(terminal.env).dataDir);
}

async function use<T>(store: Store, work: (store: Store) => Promise<T>): Promise<T> {
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}
