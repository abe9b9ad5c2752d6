// The simulated tent at night, its film dry, opened as a test says: what its probes measure, and its true humidity.
import { createProbes } from '../../server/demo/chamber-probes.ts';
import { humidityOf, ratioOf, saturatedRatio } from '../../server/demo/moist-air.ts';
import { advanceTent, SUB_STEP_SECONDS } from '../../server/demo/tent-model.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { type StoredReading, storedReading } from './open-test-store.ts';

export interface GapChange {
  readonly atMs: number;
  readonly gapPercent: number;
}

export interface TentRun {
  readonly fromMs: number;
  readonly toMs: number;
  readonly house: { readonly temperature: number; readonly humidity: number };
  /** Of the air at the start, which the tent has had at `firstGapPercent`. */
  readonly humidity: number;
  readonly firstGapPercent: number;
  readonly gaps: readonly GapChange[];
}

export interface TentProbes {
  readonly canopy: readonly [number, number];
  readonly house: number;
}

const EVERY_SECONDS = 20;

/** The same for the same options: two canopy probes that differ by 0.7 %RH, one of the house, each read every 20 s. */
export function runVentedTent(run: TentRun, probes: TentProbes) {
  const sensors = createProbes(3, false);
  const houseHumidityRatio = ratioOf(run.house.temperature, run.house.humidity);
  const weather = { houseTemperature: run.house.temperature, houseHumidity: run.house.humidity, houseHumidityRatio };
  let tent = {
    airTemperature: 21.5,
    humidityRatio: (run.humidity / 100) * saturatedRatio(21.5),
    filmTemperature: 20.2,
    benchTemperature: 23,
    floorWaterKg: 0.05,
    filmWaterKg: 0,
  };
  const readings: StoredReading[] = [];
  for (let timeMs = run.fromMs; timeMs <= run.toMs; timeMs += SUB_STEP_SECONDS * SECOND_MS) {
    const gapPercent = run.gaps.findLast(({ atMs }) => atMs <= timeMs)?.gapPercent ?? run.firstGapPercent;
    const inputs = { ...weather, sunWm2: 0, foggerOn: false, gapPercent, benchHeatWm2: 25 };
    tent = advanceTent(tent, inputs, SUB_STEP_SECONDS).state;
    sensors.follow(tent, { ...weather, sunWm2: 0, clearSunWm2: 0 }, SUB_STEP_SECONDS);
    if ((timeMs - run.fromMs) % (EVERY_SECONDS * SECOND_MS) !== 0) continue;
    const { canopy, house } = sensors.read();
    readings.push(
      ...probes.canopy.map((probe, i) => storedReading({ timeMs, ...canopy[i === 0 ? 0 : 1], probe })),
      storedReading({ timeMs, ...house, probe: probes.house }),
    );
  }
  return { readings, humidity: humidityOf(tent.airTemperature, tent.humidityRatio) };
}
