// Push subscriptions: one row a browser of a person.
import type { Database } from 'better-sqlite3';
import type { Phone, Store } from './store.ts';
import { guarded } from './store-problem.ts';

const columns = `SELECT id, person_id personId, name, endpoint, p256dh, auth, created_ms createdMs, last_result lastResult,
  last_result_ms lastResultMs FROM phones`;

export function openPhoneStore(db: Database): Store['phones'] {
  const ofPerson = db.prepare<[string], Phone>(`${columns} WHERE person_id = ? ORDER BY created_ms`);
  const all = db.prepare<[], Phone>(columns);
  const one = db.prepare<[string], Phone>(`${columns} WHERE id = ?`);
  const byEndpoint = db.prepare<[string], Phone>(`${columns} WHERE endpoint = ?`);
  const put = db.prepare(`INSERT INTO phones (id, person_id, name, endpoint, p256dh, auth, created_ms)
    VALUES (@id, @personId, @name, @endpoint, @p256dh, @auth, @createdMs)
    ON CONFLICT (endpoint) DO UPDATE SET person_id = excluded.person_id, name = excluded.name, p256dh = excluded.p256dh,
      auth = excluded.auth`);
  const remove = db.prepare('DELETE FROM phones WHERE id = ?');
  const setResult = db.prepare('UPDATE phones SET last_result = ?, last_result_ms = ? WHERE id = ?');
  return {
    ofPerson: async (personId) => guarded(() => ofPerson.all(personId)),
    all: async () => guarded(() => all.all()),
    get: async (id) => guarded(() => one.get(id) ?? null),
    async put(phone) {
      guarded(() => put.run(phone));
      return guarded(() => byEndpoint.get(phone.endpoint)) ?? phone;
    },
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
    async setResult(id, result, atMs) {
      guarded(() => setResult.run(result, atMs, id));
    },
  };
}
