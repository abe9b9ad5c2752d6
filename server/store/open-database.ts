// Opens the SQLite file: durable by setting and by proof, migrated, backed up before a migration.
import { accessSync, constants, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Problem } from '../../shared/problem.ts';
import { type Migration, migrate, readMigrations } from './migrate.ts';
import { guarded } from './store-problem.ts';

export interface DatabaseOptions {
  readonly file: string;
  readonly nowMs: number;
  readonly migrations?: readonly Migration[];
  /** Upper bound of the file in pages; only to try what happens when there is no room. */
  readonly maxPages?: number;
}

/** Opens or makes the file. Problems: `store-unavailable` (folder not writable, file damaged), `store-too-new`, `store-full`. */
export function openDatabase(options: DatabaseOptions): Database.Database {
  refuseUnwritable(dirname(options.file));
  return guarded(() => {
    const db = new Database(options.file);
    try {
      prepare(db, options);
    } catch (error) {
      db.close();
      throw error;
    }
    return db;
  });
}

/** A second connection that can only read; for the operator's commands while the service runs. */
export function openDatabaseToRead(file: string): Database.Database {
  return guarded(() => new Database(file, { readonly: true, fileMustExist: true }));
}

function prepare(db: Database.Database, options: DatabaseOptions): void {
  db.pragma('auto_vacuum = INCREMENTAL');
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('busy_timeout = 5000');
  db.pragma('journal_size_limit = 67108864');
  const backUp = () => db.exec(`VACUUM INTO '${options.file.replaceAll("'", "''")}.before-${options.nowMs}'`);
  migrate(db, options.migrations ?? readMigrations(), options.nowMs, backUp);
  if (options.maxPages !== undefined) db.pragma(`max_page_count = ${options.maxPages}`);
  proveDurable(db);
}

// SQLite lowers `synchronous` to its compiled default at the first write after switching to WAL: only a value read after a write counts.
function proveDurable(db: Database.Database): void {
  const write = () => db.prepare("INSERT OR REPLACE INTO settings (name, value) VALUES ('opened', '1')").run();
  write();
  db.pragma('synchronous = FULL');
  write();
  const level = db.pragma('synchronous', { simple: true });
  if (level !== 2)
    throw Problem.forOperator('store-unavailable', `The database would not write durably (synchronous = ${level}).`);
}

function refuseUnwritable(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.W_OK);
  } catch (cause) {
    throw Problem.forOperator(
      'store-unavailable',
      `The data folder ${folder} cannot be written: give this user the right to write there, or set TAKEWELL_DATA_DIR.`,
      { cause },
    );
  }
}
