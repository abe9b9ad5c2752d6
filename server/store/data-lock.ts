// One service a data folder: two would each judge by half of the readings. The lock is the operating system's, held on a small file of its own,
// so that it is gone with the process however that ends.
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { Problem } from '../../shared/problem.ts';

/** Takes the folder for this process; the result gives it back. Throws a Problem `conflict` when another service has it. */
export function lockData(folder: string): () => void {
  const db = new Database(join(folder, 'in-use.sqlite'), { timeout: 0 });
  try {
    db.exec('BEGIN EXCLUSIVE');
  } catch (cause) {
    db.close();
    if (!(cause instanceof Database.SqliteError) || cause.code !== 'SQLITE_BUSY') throw cause;
    throw Problem.forOperator(
      'conflict',
      `Another Takewell uses the data folder ${folder}: stop it, or set TAKEWELL_DATA_DIR.`,
      { cause },
    );
  }
  return () => db.close();
}
