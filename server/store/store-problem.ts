// Turns a failure of SQLite into a Problem. Matched by code, never by text.
import Database from 'better-sqlite3';
import { Problem } from '../../shared/problem.ts';

/** The Problem that stands for a database error; anything that is not one is returned as it is. */
export function storeProblem(error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const { code } = error;
  if (code === 'SQLITE_FULL') {
    return new Problem(
      'store-full',
      'The disk is full: free some room; readings wait at the nodes until there is some.',
      {
        cause: error,
      },
    );
  }
  if (code.startsWith('SQLITE_CONSTRAINT_UNIQUE') || code === 'SQLITE_CONSTRAINT_PRIMARYKEY') {
    return new Problem('conflict', 'That exists already.', { cause: error });
  }
  if (code.startsWith('SQLITE_CONSTRAINT')) {
    return new Problem('conflict', 'That does not fit with what is stored.', { cause: error });
  }
  return new Problem(
    'store-unavailable',
    `The data folder cannot be used now (${code}): check the disk and its rights.`,
    {
      cause: error,
    },
  );
}

/** Runs a piece of synchronous database work and translates its errors. */
export function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw storeProblem(error);
  }
}
