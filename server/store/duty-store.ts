// The weekly rota and the plan of escalation, written as one.
import type { Database } from 'better-sqlite3';
import type { DutySpan } from '../../shared/telling/duty.ts';
import type { Store } from './store.ts';
import { guarded } from './store-problem.ts';

/** The name of the setting that keeps the plan. */
const PLAN_SETTING = 'duty';

export function openDutyStore(db: Database): Store['duty'] {
  const spans = db.prepare<[], DutySpan>(
    'SELECT person_id personId, weekday, from_time "from", to_time "to" FROM duty_spans ORDER BY weekday, from_time, id',
  );
  const plan = db.prepare<[string], { value: string }>('SELECT value FROM settings WHERE name = ?');
  const clear = db.prepare('DELETE FROM duty_spans');
  const add = db.prepare('INSERT INTO duty_spans (person_id, weekday, from_time, to_time) VALUES (?, ?, ?, ?)');
  const keep = db.prepare('INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)');
  const write = db.transaction((rota: readonly DutySpan[], next: unknown) => {
    clear.run();
    for (const { personId, weekday, from, to } of rota) add.run(personId, weekday, from, to);
    keep.run(PLAN_SETTING, JSON.stringify(next));
  });
  return {
    read: async () =>
      guarded(() => {
        const kept = plan.get(PLAN_SETTING);
        return { spans: spans.all(), plan: kept === undefined ? undefined : JSON.parse(kept.value) };
      }),
    async write(rota, next) {
      guarded(() => write.immediate(rota, next));
    },
  };
}
