// Push subscriptions: one row a browser of a person; and those that ended, until their person has seen it.
import type { Database } from 'better-sqlite3';
import { prepareNoticeWriter } from './notice-store.ts';
import type { LostPhone, Phone, PhoneResult, Store } from './store.ts';
import { guarded } from './store-problem.ts';

const columns = `SELECT id, person_id personId, name, endpoint, p256dh, auth, push_key pushKey, created_ms createdMs, last_result lastResult,
  last_result_ms lastResultMs, refusals, refused_since_ms refusedSinceMs, confirmed_ms confirmedMs FROM phones`;

/** Writes what became of the last push to a phone; call inside the transaction. */
export function preparePhoneResultWriter(db: Database) {
  const accepted = db.prepare(
    'UPDATE phones SET last_result = ?, last_result_ms = ?, refusals = 0, refused_since_ms = NULL WHERE id = ?',
  );
  const failed = db.prepare('UPDATE phones SET last_result = ?, last_result_ms = ? WHERE id = ?');
  const refused = db.prepare(`UPDATE phones SET last_result = ?, last_result_ms = ?, refusals = refusals + 1,
    refused_since_ms = coalesce(refused_since_ms, ?) WHERE id = ?`);
  return ({ phoneId, kind, text, atMs }: PhoneResult): void => {
    if (kind === 'accepted') accepted.run(text, atMs, phoneId);
    else if (kind === 'failed') failed.run(text, atMs, phoneId);
    else refused.run(text, atMs, atMs, phoneId);
  };
}

export function openPhoneStore(db: Database): Store['phones'] {
  const ofPerson = db.prepare<[string], Phone>(`${columns} WHERE person_id = ? ORDER BY created_ms`);
  const all = db.prepare<[], Phone>(columns);
  const one = db.prepare<[string], Phone>(`${columns} WHERE id = ?`);
  const byEndpoint = db.prepare<[string], Phone>(`${columns} WHERE endpoint = ?`);
  const put = db.prepare(`INSERT INTO phones (id, person_id, name, endpoint, p256dh, auth, push_key, created_ms)
    VALUES (@id, @personId, @name, @endpoint, @p256dh, @auth, @pushKey, @createdMs)
    ON CONFLICT (endpoint) DO UPDATE SET person_id = excluded.person_id, name = excluded.name, p256dh = excluded.p256dh,
      auth = excluded.auth, push_key = excluded.push_key, refusals = 0, refused_since_ms = NULL`);
  const remove = db.prepare('DELETE FROM phones WHERE id = ?');
  const confirm = db.prepare('UPDATE phones SET confirmed_ms = ? WHERE id = ?');
  return {
    ofPerson: async (personId) => guarded(() => ofPerson.all(personId)),
    all: async () => guarded(() => all.all()),
    get: async (id) => guarded(() => one.get(id) ?? null),
    async put(phone) {
      guarded(() => put.run(phone));
      return guarded(() => byEndpoint.get(phone.endpoint)) ?? { ...phone, ...nothingSent };
    },
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
    async confirm(id, atMs) {
      guarded(() => confirm.run(atMs, id));
    },
    ...lostPhones(db),
  };
}

const nothingSent = { lastResult: null, lastResultMs: null, refusals: 0, refusedSinceMs: null, confirmedMs: null };

function lostPhones(db: Database): Pick<Store['phones'], 'lose' | 'lost' | 'forgetLost'> {
  const remove = db.prepare('DELETE FROM phones WHERE id = ?');
  const add = db.prepare(
    `INSERT OR REPLACE INTO lost_phones (id, person_id, name, reason, lost_ms) VALUES (?, ?, ?, ?, ?)`,
  );
  const list = db.prepare<[string], LostPhone>(
    'SELECT id, person_id personId, name, reason, lost_ms lostMs FROM lost_phones WHERE person_id = ? ORDER BY lost_ms',
  );
  const forget = db.prepare('DELETE FROM lost_phones WHERE id = ? AND person_id = ?');
  const writeNotices = prepareNoticeWriter(db);
  const lose = db.transaction<(...all: Parameters<Store['phones']['lose']>) => void>((phone, reason, atMs, notices) => {
    if (remove.run(phone.id).changes === 0) return;
    add.run(phone.id, phone.personId, phone.name, reason, atMs);
    writeNotices(notices);
  });
  return {
    async lose(...all) {
      guarded(() => lose.immediate(...all));
    },
    lost: async (personId) => guarded(() => list.all(personId)),
    forgetLost: async (id, personId) => guarded(() => forget.run(id, personId).changes > 0),
  };
}
