// Settings kept in the store: one JSON value a name. Shapes are checked by those who read them.
import type { Database } from 'better-sqlite3';
import type { Store } from './store.ts';
import { guarded } from './store-problem.ts';

/** Writes one setting; call inside a transaction. */
export function prepareSettingWriter(db: Database) {
  const put = db.prepare('INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)');
  return (name: string, value: unknown): void => void put.run(name, JSON.stringify(value));
}

export function openSettingStore(db: Database): Store['settings'] {
  const get = db.prepare<[string], { value: string }>('SELECT value FROM settings WHERE name = ?');
  const put = prepareSettingWriter(db);
  return {
    async get(name) {
      const row = guarded(() => get.get(name));
      return row === undefined ? undefined : JSON.parse(row.value);
    },
    async put(name, value) {
      guarded(() => put(name, value));
    },
  };
}
