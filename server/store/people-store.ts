// People, their sessions, and tokens of machines. Session and token values are stored as hashes only.
import type { Database } from 'better-sqlite3';
import type { NewPerson, Person, PersonDetails, Store, Token } from './store.ts';
import { guarded } from './store-problem.ts';

const columns = `SELECT id, name, role, password_hash passwordHash, created_ms createdMs, email, phone_number phoneNumber, language,
  temperature_unit temperatureUnit, quiet_from quietFrom, quiet_to quietTo FROM people`;

export function openPeopleStore(db: Database): Store['people'] {
  const list = db.prepare<[], Person>(`${columns} ORDER BY name`);
  const one = db.prepare<[string], Person>(`${columns} WHERE id = ?`);
  const byName = db.prepare<[string], Person>(`${columns} WHERE name = ?`);
  const add = db.prepare(`INSERT INTO people (id, name, role, password_hash, created_ms)
    VALUES (@id, @name, @role, @passwordHash, @createdMs)`);
  const addFirst = db.prepare(`INSERT INTO people (id, name, role, password_hash, created_ms)
    SELECT @id, @name, @role, @passwordHash, @createdMs WHERE NOT EXISTS (SELECT 1 FROM people)`);
  const update = db.prepare(
    'UPDATE people SET role = coalesce(?, role), password_hash = coalesce(?, password_hash) WHERE id = ?',
  );
  const setDetails = db.prepare(`UPDATE people SET email = @email, phone_number = @phoneNumber, language = @language,
    temperature_unit = @temperatureUnit, quiet_from = @quietFrom, quiet_to = @quietTo WHERE id = @id`);
  const remove = db.prepare('DELETE FROM people WHERE id = ?');
  return {
    list: async () => guarded(() => list.all()),
    get: async (id) => guarded(() => one.get(id) ?? null),
    byName: async (name) => guarded(() => byName.get(name) ?? null),
    setDetails: async (id: string, details: Partial<PersonDetails>) =>
      guarded(() => {
        const person = one.get(id);
        return person !== undefined && setDetails.run({ ...person, ...details }).changes > 0;
      }),
    async add(person: NewPerson) {
      guarded(() => add.run(person));
    },
    addFirst: async (person) => guarded(() => addFirst.run(person).changes > 0),
    update: async (id, { role, passwordHash }) =>
      guarded(() => update.run(role ?? null, passwordHash ?? null, id).changes > 0),
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
    ...openSessions(db),
    ...openTokens(db),
  };
}

function openSessions(db: Database) {
  const add = db.prepare(`INSERT INTO sessions (token_hash, person_id, created_ms, expires_ms)
    VALUES (@tokenHash, @personId, @createdMs, @expiresMs)`);
  const sweep = db.prepare('DELETE FROM sessions WHERE expires_ms <= ?');
  const find = db.prepare<[string, number], Person>(
    `${columns} WHERE id = (SELECT person_id FROM sessions WHERE token_hash = ? AND expires_ms > ?)`,
  );
  const end = db.prepare('DELETE FROM sessions WHERE token_hash = ?');
  const endOf = db.prepare('DELETE FROM sessions WHERE person_id = ?');
  return {
    async addSession(row: { tokenHash: string; personId: string; createdMs: number; expiresMs: number }) {
      guarded(() => {
        sweep.run(row.createdMs);
        add.run(row);
      });
    },
    bySession: async (tokenHash: string, nowMs: number) => guarded(() => find.get(tokenHash, nowMs) ?? null),
    async endSession(tokenHash: string) {
      guarded(() => end.run(tokenHash));
    },
    async endSessionsOf(personId: string) {
      guarded(() => endOf.run(personId));
    },
  };
}

function openTokens(db: Database) {
  const tokenColumns = 'SELECT id, name, scope, created_ms createdMs FROM tokens';
  const list = db.prepare<[], Token>(`${tokenColumns} ORDER BY created_ms`);
  const find = db.prepare<[string], Token>(`${tokenColumns} WHERE token_hash = ?`);
  const add = db.prepare('INSERT INTO tokens (id, name, scope, token_hash, created_ms) VALUES (?, ?, ?, ?, ?)');
  const remove = db.prepare('DELETE FROM tokens WHERE id = ?');
  return {
    tokens: async () => guarded(() => list.all()),
    async addToken(token: Token, tokenHash: string) {
      guarded(() => add.run(token.id, token.name, token.scope, tokenHash, token.createdMs));
    },
    byToken: async (tokenHash: string) => guarded(() => find.get(tokenHash) ?? null),
    removeToken: async (id: string) => guarded(() => remove.run(id).changes > 0),
  };
}
