// Calibrating a probe: the entry is stored, holds for the climate at once, and the chamber is judged anew. Readings are never touched.

import { Problem } from '../../shared/problem.ts';
import type { Calibration } from '../../shared/readings/calibration.ts';
import type { Clock } from '../clock.ts';
import type { Store, StoredCalibration } from '../store/store.ts';
import { calibrationsOf, type ProbeState } from './probe-book.ts';
import type { Rounds } from './rounds.ts';
import type { Watch } from './watch.ts';

interface CalibrationActParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly rounds: Rounds;
  readonly clock: Clock;
}

export type CalibrationActs = ReturnType<typeof createCalibrationActs>;

export function createCalibrationActs({ store, watch, rounds, clock }: CalibrationActParts) {
  const stateOf = (id: string): ProbeState => {
    const state = watch.probes.byId(id);
    if (state === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchProbe);
    return state;
  };
  return {
    /** The whole history of a probe, in the order in which the entries begin. Problem `not-found`. */
    async history(id: string): Promise<StoredCalibration[]> {
      const { number } = stateOf(id).probe;
      return (await store.calibrations.list()).filter(({ probe }) => probe === number);
    },
    /** Adds an entry that `calibrationFaults` has passed. Problem `not-found`. */
    async calibrate(id: string, correction: Calibration, note: string, person: string): Promise<StoredCalibration> {
      const chamberId = stateOf(id).probe.placement?.chamberId;
      const add = async () => {
        const { number } = stateOf(id).probe;
        const entry = { probe: number, correction, note, person, enteredMs: clock.nowMs() };
        const stored = await store.calibrations.add(entry);
        const calibrations = calibrationsOf(await store.calibrations.list(), number);
        watch.probes.put({ ...stateOf(id), calibrations });
        return stored;
      };
      return rounds.change(chamberId ? [chamberId] : [], add, () => ({ probeIds: [id] }));
    },
  };
}
