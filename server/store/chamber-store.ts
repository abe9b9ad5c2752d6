// Chambers, and those that are retired: kept for the records of their batches, and to be brought back.
import type { Database } from 'better-sqlite3';
import type { Chamber, Store } from './store.ts';
import { guarded } from './store-problem.ts';

const columns = 'SELECT id, coalesce(retired_name, name) name, created_ms createdMs FROM chambers';

export function openChamberStore(db: Database): Store['chambers'] {
  const list = db.prepare<[], Chamber>(`${columns} WHERE retired_ms IS NULL ORDER BY created_ms, id`);
  const withRetired = db.prepare<[], Chamber>(`${columns} ORDER BY created_ms, id`);
  const one = db.prepare<[string], Chamber>(`${columns} WHERE id = ? AND retired_ms IS NULL`);
  const add = db.prepare('INSERT INTO chambers (id, name, created_ms) VALUES (?, ?, ?)');
  const rename = db.prepare('UPDATE chambers SET name = ? WHERE id = ? AND retired_ms IS NULL');
  const retire = db.prepare(
    'UPDATE chambers SET retired_ms = ?, retired_name = name, name = id WHERE id = ? AND retired_ms IS NULL',
  );
  const retired = db.prepare<[], Chamber & { retiredMs: number }>(
    `SELECT id, retired_name name, created_ms createdMs, retired_ms retiredMs FROM chambers
     WHERE retired_ms IS NOT NULL ORDER BY retired_ms DESC, id`,
  );
  const bringBack = db.prepare(
    'UPDATE chambers SET name = ?, retired_ms = NULL, retired_name = NULL WHERE id = ? AND retired_ms IS NOT NULL',
  );
  const remove = db.prepare('DELETE FROM chambers WHERE id = ?');
  return {
    list: async () => guarded(() => list.all()),
    listWithRetired: async () => guarded(() => withRetired.all()),
    get: async (id) => guarded(() => one.get(id) ?? null),
    async add({ id, name, createdMs }) {
      guarded(() => add.run(id, name, createdMs));
    },
    rename: async (id, name) => guarded(() => rename.run(name, id).changes > 0),
    retire: async (id, atMs) => guarded(() => retire.run(atMs, id).changes > 0),
    retired: async () => guarded(() => retired.all()),
    bringBack: async (id, name) => guarded(() => bringBack.run(name, id).changes > 0),
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
  };
}
