// Who has been told of which alarm that is not over: a return to normal is told to them and to nobody else.
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import type { Store } from '../store/store.ts';

export interface ToldBook {
  of(alarmId: string): ReadonlySet<string>;
  add(notices: readonly NoticeDraft[]): void;
  forget(alarmId: string): void;
}

const nobody: ReadonlySet<string> = new Set();

/** Loads what the outbox says about alarms that are still active. */
export async function createToldBook(store: Store): Promise<ToldBook> {
  const book = new Map<string, Set<string>>();
  const add = (notices: readonly Pick<NoticeDraft, 'alarmId' | 'targetId' | 'kind'>[]) => {
    for (const { alarmId, targetId, kind } of notices) {
      // It told of many, of none by name.
      if (kind === 'flood') continue;
      const targets = book.get(alarmId) ?? new Set<string>();
      book.set(alarmId, targets.add(targetId));
    }
  };
  let cursor: string | undefined;
  do {
    const active = await store.alarms.page({ limit: 500, state: 'active', cursor });
    for (const { id } of active.items) add(await store.notices.ofAlarm(id));
    cursor = active.nextCursor ?? undefined;
  } while (cursor !== undefined);
  return {
    of: (alarmId) => book.get(alarmId) ?? nobody,
    add,
    forget: (alarmId) => void book.delete(alarmId),
  };
}
