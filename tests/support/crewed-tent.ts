// The tent of the demo with its crew, sun and weather, but opened as a test says from the first of its gaps on.
import { createProbes } from '../../server/demo/chamber-probes.ts';
import { type CrewAct, decideCrewAct, planCrew } from '../../server/demo/crew.ts';
import { humidityOf, ratioOf } from '../../server/demo/moist-air.ts';
import { advanceTent, SUB_STEP_SECONDS } from '../../server/demo/tent-model.ts';
import { createWeather } from '../../server/demo/weather.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { AirPoint } from '../../shared/venting/same-probes.ts';
import type { GapChange } from './vented-tent.ts';

export interface CrewedRun {
  readonly closedMs: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly zone: string;
  /** Of weather and probes: each another day. */
  readonly seed: number;
  readonly gaps: readonly GapChange[];
}

const COVER = 0.65;
const EVERY_SECONDS = 20;

/** What the canopy probes measured, their mean, and the house probe; the same for the same options. */
export function runCrewedTent(run: CrewedRun): { readonly chamber: AirPoint[]; readonly house: AirPoint[] } {
  const plan = planCrew(run.closedMs, run.zone);
  const weatherAt = createWeather(run.seed, run.zone);
  const sensors = createProbes(run.seed, false);
  const { houseTemperature } = weatherAt(run.fromMs);
  let tent = {
    airTemperature: houseTemperature,
    humidityRatio: ratioOf(houseTemperature, 85),
    filmTemperature: houseTemperature,
    benchTemperature: houseTemperature,
    floorWaterKg: 0.2,
    filmWaterKg: 0,
  };
  let act: CrewAct | null = null;
  const chamber: AirPoint[] = [];
  const house: AirPoint[] = [];
  for (let timeMs = run.fromMs; timeMs <= run.toMs; timeMs += SUB_STEP_SECONDS * SECOND_MS) {
    const weather = weatherAt(timeMs);
    const humidity = humidityOf(tent.airTemperature, tent.humidityRatio);
    act = decideCrewAct(plan, { kind: 'steady' }, { timeMs, humidity, temperature: tent.airTemperature }, act);
    const gapPercent = run.gaps.findLast(({ atMs }) => atMs <= timeMs)?.gapPercent ?? act.gapPercent;
    const sunWm2 = weather.sunWm2 * COVER * (1 - act.shade);
    tent = advanceTent(tent, { ...weather, ...act, sunWm2, gapPercent }, SUB_STEP_SECONDS).state;
    sensors.follow(tent, weather, SUB_STEP_SECONDS);
    if ((timeMs - run.fromMs) % (EVERY_SECONDS * SECOND_MS) !== 0) continue;
    const read = sensors.read();
    const mean = (quantity: 'temperature' | 'humidity') => (read.canopy[0][quantity] + read.canopy[1][quantity]) / 2;
    chamber.push({ timeMs, temperature: mean('temperature'), humidity: mean('humidity') });
    house.push({ timeMs, ...read.house });
  }
  return { chamber, house };
}
