// One simulated chamber that moves only when told how far: tent, weather, crew and probes put together. Reads no clock.
import { HOUR_MS, SECOND_MS } from '../../shared/units.ts';
import { createProbes, type ProbeSet } from './chamber-probes.ts';
import { type CrewAct, type CrewPlan, decideCrewAct, planCrew, type Scenario } from './crew.ts';
import { humidityOf, ratioOf } from './moist-air.ts';
import type { ProbeValues } from './sensor-effects.ts';
import type { TentInputs, TentState } from './tent-flows.ts';
import { advanceTent, SUB_STEP_SECONDS } from './tent-model.ts';
import { createWeather, type Weather } from './weather.ts';

export interface ChamberOptions {
  /** Whole number; the same options give the same readings. */
  readonly seed: number;
  /** Whole number of the nursery's weather, shared by its chambers; default `seed`. */
  readonly weatherSeed?: number;
  /** IANA zone of the nursery. */
  readonly zone: string;
  /** When the tent is closed: before, it is being loaded. */
  readonly closedMs: number;
  /** Time of the first readings. */
  readonly startMs: number;
  /** Between readings, more than 0. */
  readonly stepMs: number;
  readonly scenario: Scenario;
  /** Whether a probe hangs under the film. */
  readonly filmProbe: boolean;
}

/** What the probes say at one instant. */
export interface ChamberReadings {
  readonly timeMs: number;
  readonly canopy: readonly [ProbeValues, ProbeValues];
  readonly film: ProbeValues | null;
  readonly house: ProbeValues;
}

export interface LiveChamber {
  /** All readings after the last call, up to and including `timeMs`; none when it lies before the next one. */
  readonly advanceTo: (timeMs: number, stepMs?: number) => readonly ChamberReadings[];
  /** Somebody shades and opens the gap at `timeMs`: ends an overheating scenario; nothing in a steady one. */
  readonly shadeAndOpen: (timeMs: number) => void;
}

/** How long the tent is run before the first reading, so that it shows no trace of its start. */
const RUN_IN_MS = 6 * HOUR_MS;
/** Share of the sun that the greenhouse's cover lets through. */
const COVER = 0.65;

/** Builds a chamber and runs it in to `startMs`. */
export function createLiveChamber(options: ChamberOptions): LiveChamber {
  const run = startRun(options);
  moveTo(run, options.startMs);
  let nextMs = options.startMs;
  return {
    advanceTo: (timeMs, stepMs = options.stepMs) => {
      const readings: ChamberReadings[] = [];
      for (; nextMs <= timeMs; nextMs += stepMs) {
        moveTo(run, nextMs);
        readings.push({ timeMs: nextMs, ...run.probes.read() });
      }
      return readings;
    },
    shadeAndOpen: (timeMs) => {
      if (run.scenario.kind === 'overheat') run.scenario = { ...run.scenario, rescueMs: timeMs };
    },
  };
}

interface Run {
  readonly plan: CrewPlan;
  readonly weather: (timeMs: number) => Weather;
  readonly probes: ProbeSet;
  scenario: Scenario;
  timeMs: number;
  tent: TentState;
  act: CrewAct | null;
}

function startRun(options: ChamberOptions): Run {
  const weather = createWeather(options.weatherSeed ?? options.seed, options.zone);
  const timeMs = options.startMs - RUN_IN_MS;
  return {
    plan: planCrew(options.closedMs, options.zone),
    weather,
    probes: createProbes(options.seed, options.filmProbe),
    scenario: options.scenario,
    timeMs,
    tent: wetTentIn(weather(timeMs)),
    act: null,
  };
}

/** A freshly watered tent at house temperature. */
function wetTentIn({ houseTemperature }: Weather): TentState {
  return {
    airTemperature: houseTemperature,
    humidityRatio: ratioOf(houseTemperature, 85),
    filmTemperature: houseTemperature,
    benchTemperature: houseTemperature,
    floorWaterKg: 0.2,
    filmWaterKg: 0,
  };
}

function moveTo(run: Run, timeMs: number): void {
  while (run.timeMs < timeMs) {
    const seconds = Math.min(SUB_STEP_SECONDS, (timeMs - run.timeMs) / SECOND_MS);
    moveBy(run, seconds);
    run.timeMs += seconds * SECOND_MS;
  }
}

function moveBy(run: Run, seconds: number): void {
  const { tent } = run;
  const weather = run.weather(run.timeMs);
  const humidity = humidityOf(tent.airTemperature, tent.humidityRatio);
  const view = { timeMs: run.timeMs, humidity, temperature: tent.airTemperature };
  run.act = decideCrewAct(run.plan, run.scenario, view, run.act);
  run.tent = advanceTent(tent, toInputs(weather, run.act), seconds).state;
  run.probes.follow(run.tent, weather, seconds);
}

function toInputs(weather: Weather, act: CrewAct): TentInputs {
  const sunWm2 = act.clearSky ? weather.clearSunWm2 : weather.sunWm2;
  return {
    houseTemperature: weather.houseTemperature,
    houseHumidityRatio: weather.houseHumidityRatio,
    sunWm2: sunWm2 * COVER * (1 - act.shade),
    foggerOn: act.foggerOn,
    gapPercent: act.gapPercent,
    benchHeatWm2: act.benchHeatWm2,
  };
}
