// Whether new alarms come in a flood right now, and came in one then. Nothing of it is stored: the alarms themselves say it again after a restart.
import { countsForFlood, type FloodStep, floodSpans, foldFlood, stepFlood } from '../../shared/alarms/flood.ts';
import type { Store } from '../store/store.ts';

export interface FloodBook {
  /** What new alarms at these instants make of it; true only once kept. */
  step(newMs: readonly number[]): FloodBookStep;
}

export interface FloodBookStep extends Pick<FloodStep, 'begins'> {
  /** True for an instant in any flood that is remembered, the new alarms included. */
  isFloodAt(ms: number): boolean;
  keep(): void;
}

/** Far more than a flood is likely to last. */
const NEWEST = 500;

export async function openFloodBook(store: Store): Promise<FloodBook> {
  const { items } = await store.alarms.page({ limit: NEWEST });
  const counted = items.filter((alarm) => countsForFlood({ change: 'occurred', alarm }));
  let times = counted.map(({ occurredMs }) => occurredMs).reverse();
  let state = foldFlood(times);
  let spans = floodSpans(times);
  return {
    step(newMs) {
      const next = stepFlood(state, newMs);
      const nextTimes = newMs.length === 0 ? times : [...times, ...newMs].slice(-NEWEST);
      const nextSpans = newMs.length === 0 ? spans : floodSpans(nextTimes);
      return {
        begins: next.begins,
        isFloodAt: (ms) => nextSpans.some(({ fromMs, toMs }) => fromMs <= ms && ms < toMs),
        keep() {
          [state, times, spans] = [next.state, nextTimes, nextSpans];
        },
      };
    },
  };
}
