// How long each probe has been in wet air, kept for an hour: each count takes a pass over a month of its minutes. A call counts few of them anew, so
// that the list of a large nursery stays quick; the others show what is known, and come next.
import { setImmediate } from 'node:timers/promises';
import { WET_AIR_HUMIDITY, wetAirSince } from '../../shared/readings/wet-air.ts';
import { HOUR_MS } from '../../shared/units.ts';
import type { Clock } from '../clock.ts';
import type { Store } from '../store/store.ts';
import type { ProbeState } from '../watch/probe-book.ts';

/** How long a count stands. */
const STANDS_MS = HOUR_MS;
/** Probes counted anew in one call. */
const AT_ONCE = 4;

export interface WetAirBook {
  /** Counts what is due, few at a time. Rejects with the store's Problems. */
  countDue(states: readonly ProbeState[]): Promise<void>;
  /** Hours above 90 %RH since its humidity was corrected, at most in 30 days, wherever it stood, by good raw readings; null = not counted yet. */
  hoursOf(state: ProbeState): number | null;
}

/** It stands only while nothing more is known of the probe's errors. */
interface Count extends Pick<ProbeState, 'calibrations'> {
  readonly hours: number;
  readonly countedMs: number;
}

interface BookParts {
  readonly store: { readonly readings: Pick<Store['readings'], 'timeAbove'> };
  readonly clock: Pick<Clock, 'nowMs'>;
}

export function createWetAirBook({ store, clock }: BookParts): WetAirBook {
  const kept = new Map<string, Count>();
  const count = async (state: ProbeState): Promise<void> => {
    const nowMs = clock.nowMs();
    const { calibrations } = state;
    const { id, number, silenceMs } = state.probe;
    const span = { fromMs: wetAirSince(calibrations, nowMs), toMs: nowMs };
    const aboveMs = await store.readings.timeAbove(number, WET_AIR_HUMIDITY, { ...span, heldMs: silenceMs });
    kept.set(id, { calibrations, hours: aboveMs / HOUR_MS, countedMs: nowMs });
  };
  const knownOf = ({ probe: { id }, calibrations }: ProbeState): Count | undefined => {
    const known = kept.get(id);
    return known?.calibrations === calibrations ? known : undefined;
  };
  const countedMs = (state: ProbeState) => knownOf(state)?.countedMs ?? 0;
  const isDue = (state: ProbeState) => Math.abs(clock.nowMs() - countedMs(state)) >= STANDS_MS;
  return {
    async countDue(states) {
      const due = states.filter(isDue).toSorted((one, other) => countedMs(one) - countedMs(other));
      for (const state of due.slice(0, AT_ONCE)) {
        // Another call may have counted it meanwhile.
        if (isDue(state)) await count(state);
        // Readings may come in between.
        await setImmediate();
      }
    },
    hoursOf: (state) => knownOf(state)?.hours ?? null,
  };
}
