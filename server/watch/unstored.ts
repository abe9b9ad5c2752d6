// What was decided about the service while nothing could be stored. It is told at once, from memory, and written first thing when there is room:
// an alarm that the disk is full must not wait for the disk.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import type { Store } from '../store/store.ts';
import type { WatchWork } from './decision.ts';

export interface Unstored {
  isWaiting(): boolean;
  /** These and, before them, what waits. */
  withWaiting(works: readonly WatchWork[]): WatchWork;
  /** They could not be stored: keeps them, and tells their notices. */
  keep(works: readonly WatchWork[]): Promise<void>;
  /** All that waited is stored now; what was told already is not told again. */
  stored(): Promise<void>;
}

interface UnstoredParts {
  readonly notices: Pick<Store['notices'], 'markSent'>;
  readonly nowMs: () => number;
  /** Tells one notice of an alarm that is not in the store; the result when it was taken over, else null. Never rejects. */
  readonly tell: (notice: NoticeDraft, alarm: Alarm) => Promise<string | null>;
}

const nothing: WatchWork = { entries: [], changes: [], notices: [] };

export function createUnstored({ notices, nowMs, tell }: UnstoredParts): Unstored {
  let waiting = nothing;
  const told = new Map<string, string>();
  const tellAll = async ({ changes, notices: drafts }: WatchWork) => {
    await Promise.all(
      drafts.map(async (draft) => {
        const alarm = changes.findLast((one) => one.alarm.id === draft.alarmId)?.alarm;
        const result = alarm === undefined ? null : await tell(draft, alarm);
        if (result !== null) told.set(draft.id, result);
      }),
    );
  };
  return {
    isWaiting: () => waiting !== nothing,
    withWaiting: (works) => [waiting, ...works].reduce(together),
    async keep(works) {
      const more = works.reduce(together, nothing);
      waiting = together(waiting, more);
      await tellAll(more);
    },
    async stored() {
      waiting = nothing;
      for (const [id, result] of told) {
        await notices.markSent(id, result, nowMs());
        told.delete(id);
      }
    },
  };
}

function together(a: WatchWork, b: WatchWork): WatchWork {
  if (b.entries.length + b.changes.length + b.notices.length === 0) return a;
  return {
    entries: [...a.entries, ...b.entries],
    changes: [...a.changes, ...b.changes],
    notices: [...a.notices, ...b.notices],
  };
}
