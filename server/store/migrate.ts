// Brings a database file up to the newest schema. Append-only: an applied file that changed or is missing stops the start,
// as does a database newer than the program. Each step is one transaction together with its bookkeeping row.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { Problem } from '../../shared/problem.ts';

export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly sql: string;
  readonly hash: string;
}

interface Applied {
  readonly number: number;
  readonly name: string;
  readonly hash: string;
}

export const migrationsFolder = new URL('./migrations/', import.meta.url);

/** All migrations of a folder in order. Files are named `NNN-what.sql`, numbered from 1 without holes. */
export function readMigrations(folder: URL = migrationsFolder): Migration[] {
  const names = readdirSync(folder).filter((name) => name.endsWith('.sql'));
  return names.sort().map((name, index) => {
    const sql = readFileSync(new URL(name, folder), 'utf8');
    const number = Number(name.slice(0, 3));
    if (number !== index + 1) throw new Error(`migration ${name} should carry number ${index + 1}`);
    return { number, name, sql, hash: createHash('sha256').update(sql).digest('hex') };
  });
}

/**
 * Applies what is missing. `nowMs` dates the bookkeeping rows; `backUp` is called once before an existing database is changed.
 * Throws a Problem `store-too-new` or `store-unavailable` and leaves the database as it was before the failing step.
 */
export function migrate(db: Database, migrations: readonly Migration[], nowMs: number, backUp: () => void): void {
  db.exec(`CREATE TABLE IF NOT EXISTS migrations (
    number INTEGER PRIMARY KEY, name TEXT NOT NULL, hash TEXT NOT NULL, applied_ms INTEGER NOT NULL) STRICT`);
  const applied = db.prepare<[], Applied>('SELECT number, name, hash FROM migrations ORDER BY number').all();
  refuseForeign(applied, migrations);
  const missing = migrations.slice(applied.length);
  if (applied.length > 0 && missing.length > 0) backUp();
  const note = db.prepare('INSERT INTO migrations (number, name, hash, applied_ms) VALUES (?, ?, ?, ?)');
  const step = db.transaction((migration: Migration) => {
    db.exec(migration.sql);
    note.run(migration.number, migration.name, migration.hash, nowMs);
  });
  for (const migration of missing) step.immediate(migration);
}

function refuseForeign(applied: readonly Applied[], known: readonly Migration[]): void {
  applied.forEach((row, index) => {
    const migration = known[index];
    if (migration === undefined) {
      throw Problem.forOperator(
        'store-too-new',
        `The database was written by a newer Takewell (it has ${row.name}): start that version, or restore a backup made by this one.`,
      );
    }
    if (migration.hash !== row.hash) {
      throw Problem.forOperator(
        'store-unavailable',
        `The migration ${row.name} is not the one this database was made with: install an unchanged Takewell.`,
      );
    }
  });
}
