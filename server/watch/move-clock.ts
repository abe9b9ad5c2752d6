// What the watch holds, under a clock that was set: delays that run go on, and nothing of a probe may lie in the future, or it would look fresh,
// and be deaf, until that comes.
import { moveDelays } from '../../shared/alarms/move-delays.ts';
import type { ChamberWatch } from '../../shared/alarms/watch-state.ts';
import { freshQuality } from '../../shared/readings/quality/quality-run.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { WatchWork } from './decision.ts';
import type { ProbeState } from './probe-book.ts';

/** Admission takes readings dated up to so far ahead. */
export const MOST_AHEAD_MS = 5 * MINUTE_MS;

/** The probe as it is to be watched after the clock was set: silence counts from now, by whichever clock it was heard last. */
export function probeUnderClock(state: ProbeState, nowMs: number): ProbeState {
  const { probe, newest, storedToMs, countsFromMs } = state;
  const { placement } = probe;
  const isAhead = newest !== null && newest.timeMs > nowMs + MOST_AHEAD_MS;
  return {
    ...state,
    ...(isAhead && { newest: null, quality: freshQuality, storedToMs: Math.max(storedToMs, newest.timeMs) }),
    probe:
      placement === null ? probe : { ...probe, placement: { ...placement, fromMs: Math.min(placement.fromMs, nowMs) } },
    watchedSinceMs: nowMs,
    countsFromMs: Math.min(countsFromMs, nowMs),
  };
}

interface MovedWatches {
  readonly work: WatchWork;
  readonly watches: readonly ChamberWatch[];
}

/** Delays that run, moved with the clock: what is to be stored, and each place as it then is. */
export function moveWatches(watches: readonly ChamberWatch[], byMs: number): MovedWatches {
  const moved = watches.map((watch) => ({ watch, entries: moveDelays(watch, byMs) }));
  return {
    work: {
      entries: moved.flatMap(({ watch: { chamberId }, entries }) => entries.map((one) => ({ chamberId, ...one }))),
      changes: [],
      notices: [],
    },
    watches: moved.map(({ watch: { chamberId, entries: known }, entries }) => ({
      chamberId,
      entries: { ...known, ...Object.fromEntries(entries.map(({ key, entry }) => [key, entry])) },
    })),
  };
}
