// Turns a failure of SQLite into a Problem. Matched by code, never by text.
import Database from 'better-sqlite3';
import { type Finding, finding } from '../../shared/finding.ts';
import { Problem } from '../../shared/problem.ts';

/** The Problem that stands for a database error; anything that is not one is returned as it is. */
export function storeProblem(error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const { code } = error;
  if (code === 'SQLITE_FULL') {
    return new Problem('store-full', ({ problems }) => problems.diskFull, {
      cause: error,
    });
  }
  if (code.startsWith('SQLITE_CONSTRAINT_UNIQUE') || code === 'SQLITE_CONSTRAINT_PRIMARYKEY') {
    return new Problem('conflict', ({ problems }) => problems.existsAlready, { cause: error });
  }
  if (code.startsWith('SQLITE_CONSTRAINT')) {
    return new Problem('conflict', ({ problems }) => problems.doesNotFit, { cause: error });
  }
  return new Problem('store-unavailable', ({ problems }) => problems.storeUnusable(code), {
    cause: error,
  });
}

/** What keeps readings from being stored, as data that outlasts the Problem. */
export function storeTrouble(problem: Problem | null): Finding | null {
  if (problem === null) return null;
  const { code, cause, message } = problem;
  if (code === 'store-full') return finding('diskFull');
  return cause instanceof Database.SqliteError ? finding('storeUnusable', cause.code) : finding('asWritten', message);
}

/** Runs a piece of synchronous database work and translates its errors. */
export function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw storeProblem(error);
  }
}
