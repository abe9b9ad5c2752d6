// Links in messages that acknowledge one alarm, once. Only the hash of their secret is here.
import type { Database } from 'better-sqlite3';
import type { AcknowledgeLink, NewLink, Store } from './store.ts';
import { guarded } from './store-problem.ts';

/** Writes a link and takes away those that have expired; call inside the transaction. */
export function prepareLinkWriter(db: Database) {
  // A person who was removed while they were told has no links: that must not undo what else is written.
  const add =
    db.prepare(`INSERT OR IGNORE INTO acknowledge_links (token_hash, alarm_id, person_id, said_by, expires_ms, used_ms)
    SELECT @tokenHash, @alarmId, @personId, @saidBy, @expiresMs, NULL
    WHERE @personId IS NULL OR EXISTS (SELECT 1 FROM people WHERE id = @personId)`);
  const sweep = db.prepare('DELETE FROM acknowledge_links WHERE expires_ms <= ?');
  return (link: NewLink): void => {
    sweep.run(link.madeMs);
    add.run(link);
  };
}

export function openAcknowledgeLinkStore(db: Database): Store['acknowledgeLinks'] {
  const get = db.prepare<
    [string],
    AcknowledgeLink
  >(`SELECT token_hash tokenHash, alarm_id alarmId, person_id personId, said_by saidBy,
    expires_ms expiresMs, used_ms usedMs FROM acknowledge_links WHERE token_hash = ?`);
  const use = db.prepare('UPDATE acknowledge_links SET used_ms = ? WHERE token_hash = ? AND used_ms IS NULL');
  return {
    get: async (tokenHash) => guarded(() => get.get(tokenHash) ?? null),
    use: async (tokenHash, atMs) => guarded(() => use.run(atMs, tokenHash).changes > 0),
  };
}
