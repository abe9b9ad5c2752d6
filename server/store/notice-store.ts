// The outbox of notices. A notice is written with its alarm; what happened to it is written here.
import type { Database } from 'better-sqlite3';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import type { Commit, Notice, NoticeOutcome, Store } from './store.ts';
import { guarded } from './store-problem.ts';

type NoticeRow = Omit<Notice, 'urgent'> & { urgent: number };

const columns = `SELECT id, alarm_id alarmId, chamber_id chamberId, kind, channel, target_id targetId, person_id personId, urgent, decided_ms decidedMs, state,
  attempts, result, result_ms resultMs, confirmed_ms confirmedMs FROM notices`;

/** Writes notices to send; one that is there already stays as it is. Call inside the transaction. */
export function prepareNoticeWriter(db: Database) {
  const add = db.prepare(`INSERT OR IGNORE INTO notices
    (id, alarm_id, chamber_id, kind, channel, target_id, person_id, urgent, decided_ms, next_try_ms)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`);
  return (drafts: readonly NoticeDraft[]): void => {
    for (const one of drafts) {
      const { id, alarmId, chamberId, kind, channel, targetId, personId, decidedMs } = one;
      add.run(id, alarmId, chamberId, kind, channel, targetId, personId, Number(one.urgent), decidedMs, decidedMs);
    }
  };
}

/** Moves what waits with the machine's clock, and lets it be tried at once; call inside the transaction. */
export function prepareNoticeMover(db: Database) {
  const move = db.prepare(
    `UPDATE notices SET decided_ms = decided_ms + @byMs, next_try_ms = @nowMs WHERE state = 'waiting'`,
  );
  return (moved: NonNullable<Commit['clockMoved']>): void => void move.run(moved);
}

/** Writes what became of notices; call inside the transaction. */
export function prepareOutcomeWriter(db: Database) {
  const mark = db.prepare(
    'UPDATE notices SET state = ?, result = ?, result_ms = ?, attempts = attempts + 1, next_try_ms = ? WHERE id = ?',
  );
  return (outcomes: readonly NoticeOutcome[]): void => {
    for (const { noticeId, state, result, atMs, nextTryMs } of outcomes)
      mark.run(state, result, atMs, nextTryMs, noticeId);
  };
}

export function openNoticeStore(db: Database): Store['notices'] {
  const due = db.prepare<[number, number], NoticeRow>(
    `${columns} WHERE state = 'waiting' AND next_try_ms <= ? ORDER BY next_try_ms, id LIMIT ?`,
  );
  const next = db.prepare<[], { ms: number | null }>(`SELECT min(next_try_ms) ms FROM notices WHERE state = 'waiting'`);
  const ofAlarm = db.prepare<[string], NoticeRow>(`${columns} WHERE alarm_id = ? ORDER BY decided_ms, id`);
  const newest = db.prepare<[string], { ms: number | null }>('SELECT max(decided_ms) ms FROM notices WHERE kind = ?');
  const one = db.prepare<[string], NoticeRow>(`${columns} WHERE id = ?`);
  const confirm = db.prepare('UPDATE notices SET confirmed_ms = coalesce(confirmed_ms, ?) WHERE id = ?');
  const waiting = db.prepare<[], { count: number; oldestMs: number | null }>(
    `SELECT count(*) count, min(decided_ms) oldestMs FROM notices WHERE state = 'waiting'`,
  );
  const givenUp = db.prepare<[number], { count: number }>(
    `SELECT count(*) count FROM notices WHERE state = 'given-up' AND result_ms >= ?`,
  );
  return {
    due: async (nowMs, limit) => guarded(() => due.all(nowMs, limit).map(toNotice)),
    async summary(sinceMs) {
      const { count, oldestMs } = guarded(() => waiting.get()) ?? { count: 0, oldestMs: null };
      return { waiting: count, oldestMs, givenUp: guarded(() => givenUp.get(sinceMs))?.count ?? 0 };
    },
    nextDueMs: async () => guarded(() => next.get()?.ms ?? null),
    ofAlarm: async (alarmId) => guarded(() => ofAlarm.all(alarmId).map(toNotice)),
    newestMs: async (kind) => guarded(() => newest.get(kind)?.ms ?? null),
    confirm: async (id, atMs) => guarded(() => confirm.run(atMs, id).changes > 0),
    async get(id) {
      const row = guarded(() => one.get(id));
      return row === undefined ? null : toNotice(row);
    },
  };
}

function toNotice(row: NoticeRow): Notice {
  return { ...row, urgent: row.urgent === 1 };
}
