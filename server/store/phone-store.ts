// Push subscriptions: one row a browser of a person; and those that ended, until their person has seen it.
import type { Database } from 'better-sqlite3';
import { type KeptFinding, keepFinding, takeFinding } from './kept-finding.ts';
import { prepareNoticeWriter } from './notice-store.ts';
import type { LostPhone, Phone, PhoneResult, Store } from './store.ts';
import { guarded } from './store-problem.ts';

const columns = `SELECT id, person_id personId, name, endpoint, p256dh, auth, push_key pushKey, created_ms createdMs, last_result text,
  last_finding json, last_result_ms lastResultMs, refusals, refused_since_ms refusedSinceMs, confirmed_ms confirmedMs FROM phones`;

type Row = Omit<Phone, 'lastResult'> & { readonly text: string | null; readonly json: string | null };

/** Writes what became of the last push to a phone; call inside the transaction. */
export function preparePhoneResultWriter(db: Database) {
  const accepted = db.prepare(`${setLast}, refusals = 0, refused_since_ms = NULL WHERE id = @phoneId`);
  const failed = db.prepare(`${setLast} WHERE id = @phoneId`);
  const refused = db.prepare(
    `${setLast}, refusals = refusals + 1, refused_since_ms = coalesce(refused_since_ms, @atMs) WHERE id = @phoneId`,
  );
  return ({ phoneId, kind, finding, atMs }: PhoneResult): void =>
    void { accepted, failed, refused }[kind].run({ phoneId, ...keepFinding(finding), atMs });
}

export function openPhoneStore(db: Database): Store['phones'] {
  const ofPerson = db.prepare<[string], Row>(`${columns} WHERE person_id = ? ORDER BY created_ms`);
  const all = db.prepare<[], Row>(columns);
  const one = db.prepare<[string], Row>(`${columns} WHERE id = ?`);
  const byEndpoint = db.prepare<[string], Row>(`${columns} WHERE endpoint = ?`);
  const put = db.prepare(`INSERT INTO phones (id, person_id, name, endpoint, p256dh, auth, push_key, created_ms)
    VALUES (@id, @personId, @name, @endpoint, @p256dh, @auth, @pushKey, @createdMs)
    ON CONFLICT (endpoint) DO UPDATE SET person_id = excluded.person_id, name = excluded.name, p256dh = excluded.p256dh,
      auth = excluded.auth, push_key = excluded.push_key, refusals = 0, refused_since_ms = NULL`);
  const remove = db.prepare('DELETE FROM phones WHERE id = ?');
  const confirm = db.prepare('UPDATE phones SET confirmed_ms = ? WHERE id = ?');
  return {
    ofPerson: async (personId) => guarded(() => ofPerson.all(personId)).map(toPhone),
    all: async () => guarded(() => all.all()).map(toPhone),
    async get(id) {
      const row = guarded(() => one.get(id));
      return row === undefined ? null : toPhone(row);
    },
    async put(phone) {
      guarded(() => put.run(phone));
      const row = guarded(() => byEndpoint.get(phone.endpoint));
      return row === undefined ? { ...phone, ...nothingSent } : toPhone(row);
    },
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
    async confirm(id, atMs) {
      guarded(() => confirm.run(atMs, id));
    },
    ...lostPhones(db),
  };
}

const setLast = 'UPDATE phones SET last_result = @text, last_finding = @json, last_result_ms = @atMs';

const nothingSent = { lastResult: null, lastResultMs: null, refusals: 0, refusedSinceMs: null, confirmedMs: null };

function toPhone({ text, json, ...phone }: Row): Phone {
  return { ...phone, lastResult: text === null ? null : takeFinding({ text, json }) };
}

type LostRow = Omit<LostPhone, 'reason'> & KeptFinding;

function lostPhones(db: Database): Pick<Store['phones'], 'lose' | 'lost' | 'forgetLost'> {
  const remove = db.prepare('DELETE FROM phones WHERE id = ?');
  const add = db.prepare(
    `INSERT OR REPLACE INTO lost_phones (id, person_id, name, reason, finding, lost_ms) VALUES (?, ?, ?, ?, ?, ?)`,
  );
  const list = db.prepare<[string], LostRow>(
    `SELECT id, person_id personId, name, reason text, finding json, lost_ms lostMs FROM lost_phones
     WHERE person_id = ? ORDER BY lost_ms`,
  );
  const forget = db.prepare('DELETE FROM lost_phones WHERE id = ? AND person_id = ?');
  const writeNotices = prepareNoticeWriter(db);
  const lose = db.transaction<(...all: Parameters<Store['phones']['lose']>) => void>((phone, reason, atMs, notices) => {
    if (remove.run(phone.id).changes === 0) return;
    const { text, json } = keepFinding(reason);
    add.run(phone.id, phone.personId, phone.name, text, json, atMs);
    writeNotices(notices);
  });
  return {
    async lose(...all) {
      guarded(() => lose.immediate(...all));
    },
    lost: async (personId) => guarded(() => list.all(personId)).map(toLost),
    forgetLost: async (id, personId) => guarded(() => forget.run(id, personId).changes > 0),
  };
}

function toLost({ text, json, ...phone }: LostRow): LostPhone {
  return { ...phone, reason: takeFinding({ text, json }) };
}
