// What was told of each alarm that is not over, and when an outage was told of last: what is to be told next is decided from it.
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import type { Store } from '../store/store.ts';

export interface ToldBook {
  /** In order of time. */
  of(alarmId: string): readonly NoticeDraft[];
  add(notices: readonly NoticeDraft[]): void;
  forget(alarmId: string): void;
  /** null = never. */
  outageToldMs(): number | null;
}

/** Loads what the outbox says about alarms that are still active. */
export async function createToldBook(store: Store): Promise<ToldBook> {
  const book = new Map<string, NoticeDraft[]>();
  let outageMs = await store.notices.newestMs('outage');
  const add = (notices: readonly NoticeDraft[]) => {
    for (const notice of notices) {
      const known = book.get(notice.alarmId) ?? [];
      if (!known.some(({ id }) => id === notice.id)) known.push(notice);
      book.set(notice.alarmId, known);
      if (notice.kind === 'outage') outageMs = notice.decidedMs;
    }
  };
  let cursor: string | undefined;
  do {
    const active = await store.alarms.page({ limit: 500, state: 'active', cursor });
    for (const { id } of active.items) add(await store.notices.ofAlarm(id));
    cursor = active.nextCursor ?? undefined;
  } while (cursor !== undefined);
  return {
    of: (alarmId) => book.get(alarmId) ?? [],
    add,
    forget: (alarmId) => void book.delete(alarmId),
    outageToldMs: () => outageMs,
  };
}
