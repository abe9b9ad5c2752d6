// What the watch holds, under a clock that was set: delays that run go on, and nothing of a probe may lie in the future, or it would look fresh,
// and be deaf, until that comes.
import { moveDelays } from '../../shared/alarms/move-delays.ts';
import type { SetBack } from '../../shared/alarms/service/follow-outage.ts';
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

/** What is remembered of a clock that was set back just now, so that a restart neither tells it again nor takes what was dated by it for fresh. */
export function setBackAt(nowMs: number, before: SetBack | null, probes: Iterable<ProbeState>): SetBack {
  const stored = [...probes].map(({ newest, storedToMs }) => Math.max(newest?.timeMs ?? 0, storedToMs));
  return { atMs: nowMs, aheadToMs: Math.max(nowMs, before?.aheadToMs ?? nowMs, ...stored) };
}

/** True for a reading that was dated by a clock which has been set back since, and lies ahead of what may be heard now. */
export function isDatedAhead(timeMs: number, setBack: SetBack | null, nowMs: number): boolean {
  return setBack !== null && timeMs <= setBack.aheadToMs && timeMs > nowMs + MOST_AHEAD_MS;
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
