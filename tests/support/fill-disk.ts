// A store that has no room: its file is bounded to the pages it has. Room is made as on a real disk, by removing something else that fills it.
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openStore } from '../../server/store/open-store.ts';
import { makeTestFolder } from './open-test-app.ts';

export interface FullStore {
  readonly folder: string;
  /** Give it to the service as its bound. */
  readonly maxPages: number;
  /** Frees about 4 MB in the file. */
  makeRoom(): void;
}

/** Makes a data folder whose database is filled up but for a few pages: enough to start, not enough for much more. */
export async function makeFullStore({ sparePages }: { readonly sparePages: number }): Promise<FullStore> {
  const folder = await makeTestFolder();
  const file = join(folder, 'takewell.sqlite');
  await openStore({ file, nowMs: 0 }).close();
  const db = new Database(file);
  db.exec('CREATE TABLE filling (bytes BLOB)');
  const fill = db.prepare('INSERT INTO filling VALUES (zeroblob(4000))');
  db.transaction(() => {
    for (let page = 0; page < 1_000; page += 1) fill.run();
  })();
  const pages = Number(db.pragma('page_count', { simple: true }));
  db.close();
  return {
    folder,
    maxPages: pages + sparePages,
    makeRoom() {
      const other = new Database(file);
      other.exec('DELETE FROM filling');
      other.close();
    },
  };
}
