// Chambers.
import type { Database } from 'better-sqlite3';
import type { Chamber, Store } from './store.ts';
import { guarded } from './store-problem.ts';

export function openChamberStore(db: Database): Store['chambers'] {
  const list = db.prepare<[], Chamber>('SELECT id, name, created_ms createdMs FROM chambers ORDER BY created_ms, id');
  const add = db.prepare('INSERT INTO chambers (id, name, created_ms) VALUES (?, ?, ?)');
  const rename = db.prepare('UPDATE chambers SET name = ? WHERE id = ?');
  const remove = db.prepare('DELETE FROM chambers WHERE id = ?');
  return {
    list: async () => guarded(() => list.all()),
    async add({ id, name, createdMs }) {
      guarded(() => add.run(id, name, createdMs));
    },
    rename: async (id, name) => guarded(() => rename.run(name, id).changes > 0),
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
  };
}
