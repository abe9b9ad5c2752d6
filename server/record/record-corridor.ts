// The limits that held during a batch, for its record: as the plan went, with the house air that was known at the time.
import { type BatchTimes, planStages } from '../../shared/healing/batch-clock.ts';
import { type Corridor, type HouseAir, makeCorridor } from '../../shared/healing/corridor.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { DAY_MS, HOUR_MS } from '../../shared/units.ts';
import { calibratedMean } from '../calibrated-buckets.ts';
import type { Store } from '../store/store.ts';
import type { ProbeSource, RecordWindow } from './record-sources.ts';

/** The rule of this file in words, for the record. */
export const corridorRule =
  'Limits: those of the profile along the stages as they went; where a limit follows the house, the mean of the house probes over the 24 hours ' +
  'before the full hour, or the number the profile falls back on when no house probe was heard.';

/** The corridor at any instant of the window. */
export async function recordCorridor(
  store: Pick<Store, 'readings'>,
  {
    document,
    times,
    sources,
    window,
  }: {
    readonly document: ProfileDocument;
    readonly times: BatchTimes;
    readonly sources: readonly ProbeSource[];
    readonly window: RecordWindow;
  },
): Promise<(atMs: number) => Corridor | null> {
  const spans = planStages(document, times, window.toMs);
  const house = await hourlyHouseAir(
    store,
    sources.filter(({ place }) => place === 'house'),
    window,
  );
  const made = new Map<HouseAir, (atMs: number) => Corridor | null>();
  const corridorOfHour = (hour: number) => {
    const air = house.get(hour) ?? unknownAir;
    const corridorAt = made.get(air) ?? makeCorridor(document, spans, air);
    made.set(air, corridorAt);
    return corridorAt;
  };
  return rememberTwo((atMs) => corridorOfHour(Math.floor(atMs / HOUR_MS))(atMs));
}

/** The figures ask again and again for the two ends of the line they are at. */
function rememberTwo<T>(compute: (atMs: number) => T): (atMs: number) => T {
  interface Answer {
    readonly atMs: number;
    readonly value: T;
  }
  let newest: Answer | null = null as Answer | null;
  let older: Answer | null = null as Answer | null;
  return (atMs) => {
    if (newest?.atMs === atMs) return newest.value;
    if (older?.atMs === atMs) return older.value;
    older = newest;
    newest = { atMs, value: compute(atMs) };
    return newest.value;
  };
}

const unknownAir: HouseAir = { temperature: null, humidity: null };

/** Keyed by hours since the epoch; empty without house probes. */
async function hourlyHouseAir(
  store: Pick<Store, 'readings'>,
  sources: readonly ProbeSource[],
  { fromMs, toMs }: RecordWindow,
): Promise<Map<number, HouseAir>> {
  const byHour = new Map<number, HouseAir>();
  if (sources.length === 0) return byHour;
  for (let hour = Math.floor(fromMs / HOUR_MS); hour * HOUR_MS <= toMs; hour++) {
    const endMs = hour * HOUR_MS;
    const means = await Promise.all(
      sources
        .filter((source) => source.fromMs < endMs && source.toMs > endMs - DAY_MS)
        .map((source) => calibratedMean(store.readings, source, endMs - DAY_MS, endMs)),
    );
    byHour.set(hour, { temperature: meanOf(means, 'temperature'), humidity: meanOf(means, 'humidity') });
  }
  return byHour;
}

function meanOf(means: readonly HouseAir[], quantity: keyof HouseAir): number | null {
  const values = means.flatMap((mean) => mean[quantity] ?? []);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
