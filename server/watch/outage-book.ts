// What the service remembers of gaps in its own watch; written with what the rounds decide, so that a kill loses none of it.
import { noOutage, type OutageMemory } from '../../shared/alarms/service/follow-outage.ts';
import type { Store } from '../store/store.ts';

/** The name under which it is kept in the store. */
export const OUTAGE_SETTING = 'watchRounds';

export interface OutageBook {
  memory(): OutageMemory;
  keep(memory: OutageMemory): void;
  /** A reading came that was measured a while ago: buffers are being sent. */
  noteLate(nowMs: number): void;
  lateMs(): number | null;
}

export async function openOutageBook(store: Pick<Store, 'settings'>): Promise<OutageBook> {
  // What an earlier version did not keep is as if nothing had happened.
  const kept = (await store.settings.get(OUTAGE_SETTING)) as Partial<OutageMemory> | undefined;
  let memory: OutageMemory = { ...noOutage, ...kept };
  let lateMs: number | null = null;
  return {
    memory: () => memory,
    keep(next) {
      memory = next;
    },
    noteLate(nowMs) {
      lateMs = nowMs;
    },
    lateMs: () => lateMs,
  };
}
