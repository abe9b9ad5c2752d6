// Alarms, every step of their life cycle, and what the watch remembers of each chamber.
import type { Database } from 'better-sqlite3';
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { AlarmStep } from '../../shared/alarms/alarm-statistics.ts';
import type { ChamberWatch, WatchEntry } from '../../shared/alarms/watch-state.ts';
import { readAlarm, readWatchEntry } from './read-alarm.ts';
import type { AlarmEvent, Commit, Store } from './store.ts';
import { guarded } from './store-problem.ts';

interface AlarmQuery {
  readonly state: string | null;
  readonly chamberId: string | null;
  readonly beforeMs: number | null;
  readonly beforeId: string | null;
  readonly limit: number;
}

type WatchWork = NonNullable<Commit['watch']>;

/** Writes what the watch decided; call inside the transaction. */
export function prepareAlarmWriter(db: Database) {
  const put =
    db.prepare(`INSERT INTO alarms (id, chamber_id, batch_id, state, occurred_ms, document) VALUES (?, ?, ?, ?, ?, ?)
    ON CONFLICT (id) DO UPDATE SET state = excluded.state, document = excluded.document`);
  const event =
    db.prepare(`INSERT INTO alarm_events (alarm_id, at_ms, change, from_state, to_state, priority, limit_value, value, person, note)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`);
  const entry = db.prepare('INSERT OR REPLACE INTO watch_entries (chamber_id, entry_key, entry) VALUES (?, ?, ?)');
  return ({ changes, entries }: WatchWork): void => {
    for (const { alarm, change, atMs, from, person, note } of changes) {
      put.run(alarm.id, alarm.chamberId, alarm.batchId, alarm.state, alarm.occurredMs, JSON.stringify(alarm));
      // A new peak is part of the alarm; as a step of its life it would drown the others.
      if (change !== 'peaked')
        event.run(alarm.id, atMs, change, from, alarm.state, alarm.priority, alarm.limit, alarm.value, person, note);
    }
    for (const one of entries) entry.run(one.chamberId, one.key, JSON.stringify(one.entry));
  };
}

export function openAlarmStore(db: Database): Store['alarms'] {
  const entries = db.prepare<[], { chamberId: string; key: string; entry: string }>(
    'SELECT chamber_id chamberId, entry_key key, entry FROM watch_entries ORDER BY chamber_id',
  );
  const one = db.prepare<[string], { document: string }>('SELECT document FROM alarms WHERE id = ?');
  const ofBatch = db.prepare<[string], { document: string }>(
    'SELECT document FROM alarms WHERE batch_id = ? ORDER BY occurred_ms, id',
  );
  // The second condition lets it use the index of those that are active.
  const unacknowledgedIn = db.prepare<[string], { document: string }>(
    `SELECT document FROM alarms WHERE state = 'unacknowledged' AND state <> 'normal' AND chamber_id = ?
     ORDER BY occurred_ms, id`,
  );
  const page = db.prepare<[AlarmQuery], { document: string }>(
    `SELECT document FROM alarms
     WHERE (@state IS NULL OR (@state = 'active' AND state <> 'normal') OR state = @state)
       AND (@chamberId IS NULL OR chamber_id = @chamberId)
       AND (@beforeMs IS NULL OR (occurred_ms, id) < (@beforeMs, @beforeId))
     ORDER BY occurred_ms DESC, id DESC LIMIT @limit`,
  );
  const events = db.prepare<[string], AlarmEvent>(
    `SELECT alarm_id alarmId, at_ms atMs, change, from_state fromState, to_state toState, priority,
       limit_value "limit", value, person, note
     FROM alarm_events WHERE alarm_id = ? ORDER BY id`,
  );
  const steps = db.prepare<[{ fromMs: number; toMs: number }], AlarmStep>(
    `SELECT e.alarm_id alarmId, a.chamber_id chamberId, json_extract(a.document, '$.rule') rule,
       coalesce(json_extract(a.document, '$.probeId'), json_extract(a.document, '$.about.id')) subjectId,
       e.at_ms atMs, e.change, e.to_state toState, e.priority
     FROM alarm_events e JOIN alarms a ON a.id = e.alarm_id
     WHERE e.change IN ('occurred', 'occurred-again', 'returned') AND e.at_ms < @toMs
       AND (a.state <> 'normal' OR a.id IN (SELECT alarm_id FROM alarm_events WHERE at_ms >= @fromMs))
     ORDER BY e.at_ms, e.id`,
  );
  return {
    async watches() {
      const watches = new Map<string, Record<string, WatchEntry>>();
      for (const row of guarded(() => entries.all())) {
        const known = watches.get(row.chamberId) ?? {};
        known[row.key] = readWatchEntry(row.entry);
        watches.set(row.chamberId, known);
      }
      return [...watches].map(([chamberId, known]): ChamberWatch => ({ chamberId, entries: known }));
    },
    async get(id) {
      const row = guarded(() => one.get(id));
      return row === undefined ? null : toAlarm(row);
    },
    async page({ limit, cursor, state, chamberId }) {
      const [ms, id] = cursor?.split('~') ?? [];
      const before = { beforeMs: ms === undefined ? null : Number(ms), beforeId: id ?? null };
      const wanted = { state: state ?? null, chamberId: chamberId ?? null, ...before, limit: limit + 1 };
      const rows = guarded(() => page.all(wanted)).map(toAlarm);
      const items = rows.slice(0, limit);
      const last = rows.length > limit ? items.at(-1) : undefined;
      return { items, nextCursor: last === undefined ? null : `${last.occurredMs}~${last.id}` };
    },
    ofBatch: async (batchId) => guarded(() => ofBatch.all(batchId).map(toAlarm)),
    unacknowledgedIn: async (chamberId) => guarded(() => unacknowledgedIn.all(chamberId).map(toAlarm)),
    steps: async (fromMs, toMs) => guarded(() => steps.all({ fromMs, toMs })),
    events: async (alarmId) => guarded(() => events.all(alarmId)),
  };
}

function toAlarm(row: { document: string }): Alarm {
  return readAlarm(row.document);
}
