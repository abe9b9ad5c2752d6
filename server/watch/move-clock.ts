// What the watch holds of a probe, under a clock that was set: nothing of it may lie in the future, or the probe would look fresh, and be deaf,
// until that comes.
import { freshQuality } from '../../shared/readings/quality/quality-run.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { ProbeState } from './probe-book.ts';

/** Admission takes readings dated up to so far ahead. */
export const MOST_AHEAD_MS = 5 * MINUTE_MS;

/** The probe as it is to be watched after the clock was set: silence counts from now, by whichever clock it was heard last. */
export function probeUnderClock(state: ProbeState, nowMs: number): ProbeState {
  const { probe, newest, countsFromMs } = state;
  const { placement } = probe;
  const isAhead = newest !== null && newest.timeMs > nowMs + MOST_AHEAD_MS;
  return {
    ...state,
    ...(isAhead && { newest: null, quality: freshQuality }),
    probe:
      placement === null ? probe : { ...probe, placement: { ...placement, fromMs: Math.min(placement.fromMs, nowMs) } },
    watchedSinceMs: nowMs,
    countsFromMs: Math.min(countsFromMs, nowMs),
  };
}
