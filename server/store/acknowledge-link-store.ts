// Links in messages that acknowledge one alarm, once. Only the hash of their secret is here.
import type { Database } from 'better-sqlite3';
import type { AcknowledgeLink, Store } from './store.ts';
import { guarded } from './store-problem.ts';

export function openAcknowledgeLinkStore(db: Database): Store['acknowledgeLinks'] {
  const add =
    db.prepare(`INSERT OR IGNORE INTO acknowledge_links (token_hash, alarm_id, person_id, said_by, expires_ms, used_ms)
    VALUES (@tokenHash, @alarmId, @personId, @saidBy, @expiresMs, NULL)`);
  const sweep = db.prepare('DELETE FROM acknowledge_links WHERE expires_ms <= ?');
  const get = db.prepare<
    [string],
    AcknowledgeLink
  >(`SELECT token_hash tokenHash, alarm_id alarmId, person_id personId, said_by saidBy,
    expires_ms expiresMs, used_ms usedMs FROM acknowledge_links WHERE token_hash = ?`);
  const use = db.prepare('UPDATE acknowledge_links SET used_ms = ? WHERE token_hash = ? AND used_ms IS NULL');
  const addAndSweep = db.transaction((link: Omit<AcknowledgeLink, 'usedMs'>, sweepBeforeMs: number) => {
    sweep.run(sweepBeforeMs);
    add.run(link);
  });
  return {
    async add(link, sweepBeforeMs) {
      guarded(() => addAndSweep.immediate(link, sweepBeforeMs));
    },
    get: async (tokenHash) => guarded(() => get.get(tokenHash) ?? null),
    use: async (tokenHash, atMs) => guarded(() => use.run(atMs, tokenHash).changes > 0),
  };
}
