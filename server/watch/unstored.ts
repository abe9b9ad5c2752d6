// What was decided about the service while nothing could be stored. It is told at once, from memory, and written first thing when there is room:
// an alarm that the disk is full must not wait for the disk.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import type { Commit, NoticeOutcome } from '../store/store.ts';
import type { WatchWork } from './decision.ts';

export interface Unstored {
  isWaiting(): boolean;
  /** These and, before them, what waits, with what became of it: what was told already is not told again. */
  withWaiting(works: readonly WatchWork[]): Pick<Commit, 'watch' | 'outcomes'>;
  /** They could not be stored: keeps them, and tells their notices. */
  keep(works: readonly WatchWork[]): Promise<void>;
  /** All that waited is stored now. */
  stored(): void;
}

interface UnstoredParts {
  readonly nowMs: () => number;
  /** Tells one notice of an alarm that is not in the store; the result when it was taken over, else null. Never rejects. */
  readonly tell: (notice: NoticeDraft, alarm: Alarm) => Promise<string | null>;
}

const nothing: WatchWork = { entries: [], changes: [], notices: [] };

export function createUnstored({ nowMs, tell }: UnstoredParts): Unstored {
  let waiting = nothing;
  let told: readonly NoticeOutcome[] = [];
  const tellAll = async ({ changes, notices: drafts }: WatchWork) => {
    await Promise.all(
      drafts.map(async (draft) => {
        const alarm = changes.findLast((one) => one.alarm.id === draft.alarmId)?.alarm;
        const result = alarm === undefined ? null : await tell(draft, alarm);
        const atMs = nowMs();
        if (result !== null) told = [...told, { noticeId: draft.id, state: 'sent', result, atMs, nextTryMs: atMs }];
      }),
    );
  };
  return {
    isWaiting: () => waiting !== nothing,
    withWaiting: (works) => ({ watch: [waiting, ...works].reduce(together), outcomes: told }),
    async keep(works) {
      const more = works.reduce(together, nothing);
      waiting = together(waiting, more);
      await tellAll(more);
    },
    stored() {
      waiting = nothing;
      told = [];
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
