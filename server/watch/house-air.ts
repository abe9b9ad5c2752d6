// The air of the house around the chambers: what its probes say now, and the running day means that the end of venting is measured by.
import type { HouseAir } from '../../shared/healing/corridor.ts';
import { type ChamberClimate, chamberClimate } from '../../shared/readings/chamber-climate.ts';
import { DAY_MS, MINUTE_MS } from '../../shared/units.ts';
import { calibratedMean } from '../calibrated-buckets.ts';
import type { Store } from '../store/store.ts';
import { type ProbeState, probeNow } from './probe-book.ts';

const unknown: HouseAir = { temperature: null, humidity: null };
/** A day mean moves slowly: asked for again this often. */
const REFRESH_MS = 5 * MINUTE_MS;

export interface HouseWatch {
  mean(): HouseAir;
  /** Asks the store anew when the means are old; true when they have changed. */
  refresh(probes: Iterable<ProbeState>, nowMs: number): Promise<boolean>;
}

export function createHouseWatch(store: Store): HouseWatch {
  let mean = unknown;
  let readMs = Number.NEGATIVE_INFINITY;
  return {
    mean: () => mean,
    async refresh(probes, nowMs) {
      if (Math.abs(nowMs - readMs) < REFRESH_MS) return false;
      readMs = nowMs;
      const before = mean;
      mean = await meanOf(store, housesOf(probes), nowMs);
      return mean.temperature !== before.temperature || mean.humidity !== before.humidity;
    },
  };
}

/** The air of the house now, by its healthy probes. */
export function houseClimate(probes: Iterable<ProbeState>, nowMs: number, altitudeM: number): ChamberClimate {
  const now = housesOf(probes).flatMap((state) => probeNow(state) ?? []);
  // The rule for a climate is the same; only the place differs.
  return chamberClimate(
    now.map((one) => ({ ...one, place: 'canopy' as const })),
    nowMs,
    altitudeM,
  );
}

function housesOf(probes: Iterable<ProbeState>): ProbeState[] {
  return [...probes].filter(({ probe }) => probe.placement?.place === 'house' && !probe.outOfService);
}

async function meanOf(store: Store, houses: readonly ProbeState[], nowMs: number): Promise<HouseAir> {
  // What a probe measured before it stood in the house is not the air of the house.
  const sinceMs = ({ probe }: ProbeState) => Math.max(nowMs - DAY_MS, probe.placement?.fromMs ?? 0);
  const means = await Promise.all(
    houses.map((one) => {
      const probe = { probe: one.probe.number, calibrations: one.calibrations };
      return calibratedMean(store.readings, probe, sinceMs(one), nowMs);
    }),
  );
  const average = (values: readonly number[]) =>
    values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    temperature: average(means.flatMap((one) => one.temperature ?? [])),
    humidity: average(means.flatMap((one) => one.humidity ?? [])),
  };
}
