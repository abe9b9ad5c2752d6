// Invitations that wait to be used. One that is used, withdrawn or expired is removed: there is nothing to use a second time.
import type { Database } from 'better-sqlite3';
import type { Invitation, NewPerson, Store } from './store.ts';
import { guarded } from './store-problem.ts';

const columns = 'SELECT id, name, role, made_by madeBy, created_ms createdMs, expires_ms expiresMs FROM invitations';

export function openInvitationStore(db: Database): Store['invitations'] {
  const sweep = db.prepare('DELETE FROM invitations WHERE expires_ms <= ?');
  const list = db.prepare<[number], Invitation>(`${columns} WHERE expires_ms > ? ORDER BY created_ms`);
  const find = db.prepare<[string, number], Invitation>(`${columns} WHERE secret_hash = ? AND expires_ms > ?`);
  const add = db.prepare(`INSERT INTO invitations (id, secret_hash, name, role, made_by, created_ms, expires_ms)
    VALUES (@id, @secretHash, @name, @role, @madeBy, @createdMs, @expiresMs)`);
  const remove = db.prepare('DELETE FROM invitations WHERE id = ?');
  const use = db.prepare('DELETE FROM invitations WHERE secret_hash = ? AND expires_ms > ?');
  const addPerson = db.prepare(`INSERT INTO people (id, name, role, password_hash, created_ms)
    VALUES (@id, @name, @role, @passwordHash, @createdMs)`);
  const accept = db.transaction((secretHash: string, person: NewPerson): boolean => {
    if (use.run(secretHash, person.createdMs).changes === 0) return false;
    // A name that is taken undoes the use: the invitation can be tried again with another.
    addPerson.run(person);
    return true;
  });
  return {
    list: async (nowMs) => guarded(() => list.all(nowMs)),
    bySecret: async (secretHash, nowMs) => guarded(() => find.get(secretHash, nowMs) ?? null),
    async add(invitation, secretHash) {
      guarded(() => {
        sweep.run(invitation.createdMs);
        add.run({ ...invitation, secretHash });
      });
    },
    accept: async (secretHash, person) => guarded(() => accept.immediate(secretHash, person)),
    remove: async (id) => guarded(() => remove.run(id).changes > 0),
  };
}
