// The simulated tents of the nursery, each run in to the opening of its batch, and the one step by which past and present move them.
import type { IncomingReading } from '../../shared/readings/reading.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { createLiveChamber, type LiveChamber } from './live-chamber.ts';
import type { StoredNursery, StoredTent } from './store-nursery.ts';
import { readHouse, readTent } from './tent-readings.ts';

/** How often a node of the past has measured. */
export const PAST_STEP_MS = MINUTE_MS;

export interface NodeReadings {
  readonly node: string;
  readonly readings: readonly IncomingReading[];
}

export interface RunningTents {
  /** All that the nodes measure up to and including `timeMs`, every `stepMs`, by node and in order of time. */
  advanceTo(timeMs: number, stepMs: number): NodeReadings[];
  /** Somebody shades and opens the tent that overheats. */
  shadeAndOpen(timeMs: number): void;
}

/** Starts the tents at the openings of their batches. */
export function startTents({ nursery, tents }: StoredNursery): RunningTents {
  const running = tents.map((stored) => ({ stored, live: startTent(stored, nursery.zone, nursery.weatherSeed) }));
  // The tent that was opened first has seen all of the time that the house probe is to tell of.
  const first = [...tents].sort((a, b) => a.tent.batch.openedMs - b.tent.batch.openedMs)[0];
  return {
    advanceTo: (timeMs, stepMs) =>
      running.flatMap(({ stored, live }): NodeReadings[] => {
        const steps = live.advanceTo(timeMs, stepMs);
        const { tent } = stored;
        const own = { node: tent.node, readings: steps.flatMap((step) => readTent(tent, step)) };
        if (stored !== first) return [own];
        return [own, { node: nursery.house.node, readings: steps.map((step) => readHouse(nursery, step)) }];
      }),
    shadeAndOpen: (timeMs) => {
      for (const { live } of running) live.shadeAndOpen(timeMs);
    },
  };
}

function startTent({ tent }: StoredTent, zone: string, weatherSeed: number): LiveChamber {
  const { seed, scenario, batch, probes } = tent;
  const filmProbe = probes.some(({ place }) => place === 'film');
  const times = { closedMs: batch.closedMs, startMs: batch.openedMs, stepMs: PAST_STEP_MS };
  return createLiveChamber({ seed, weatherSeed, zone, scenario, filmProbe, ...times });
}
