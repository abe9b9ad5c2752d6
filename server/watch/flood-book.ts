// Whether new alarms come in a flood right now. Nothing of it is stored: the alarms themselves say it again after a restart.
import { type FloodStep, foldFlood, stepFlood } from '../../shared/alarms/flood.ts';
import { countsForFlood } from '../../shared/alarms/notice-due.ts';
import type { Store } from '../store/store.ts';

export interface FloodBook {
  /** What new alarms at these instants make of it; true only once kept. */
  step(newMs: readonly number[]): FloodStep;
  keep(step: FloodStep): void;
}

/** Far more than a flood is likely to last. */
const NEWEST = 500;

export async function openFloodBook(store: Store): Promise<FloodBook> {
  const { items } = await store.alarms.page({ limit: NEWEST });
  const counted = items.filter((alarm) => countsForFlood({ change: 'occurred', alarm }));
  let state = foldFlood(counted.map(({ occurredMs }) => occurredMs).reverse());
  return {
    step: (newMs) => stepFlood(state, newMs),
    keep(step) {
      state = step.state;
    },
  };
}
