// Simulated tents that get hot, for judging forecasts: left in the sun of a sudden, or shaded too thinly all day. No seed of theirs was used to
// tune anything.
import { createProbes } from '../../server/demo/chamber-probes.ts';
import { createLiveChamber } from '../../server/demo/live-chamber.ts';
import { humidityOf, ratioOf } from '../../server/demo/moist-air.ts';
import { createNoise } from '../../server/demo/seeded-noise.ts';
import { simulateChamber } from '../../server/demo/simulate-chamber.ts';
import type { TentState } from '../../server/demo/tent-flows.ts';
import { advanceTent } from '../../server/demo/tent-model.ts';
import { createWeather } from '../../server/demo/weather.ts';
import type { Measurement } from '../../shared/forecast/local-linear-trend.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS } from '../../shared/units.ts';

const ZONE = 'Europe/Amsterdam';
/** Midnight in the zone, in summer time. */
const MIDNIGHT_MS = Date.parse('2026-04-06T22:00:00Z');
const DAYS = 7;

/** A week in which every day, at another hour, shade is forgotten and fog fails for 50 minutes. */
export function suddenSun(seed: number, stepMs: number): Measurement[] {
  const days = Array.from({ length: DAYS }, (_, day) => MIDNIGHT_MS + day * DAY_MS);
  return days.flatMap((startMs, day) => {
    const fromMs = startMs + (8 + ((seed * 7 + day * 5) % 8)) * HOUR_MS;
    const scenario = { kind: 'overheat', fromMs, rescueMs: fromMs + 50 * MINUTE_MS } as const;
    const fixed = { weatherSeed: seed, zone: ZONE, closedMs: MIDNIGHT_MS - 9 * HOUR_MS, stepMs, filmProbe: false };
    const chamber = createLiveChamber({ ...fixed, seed: seed * 100 + day, startMs, scenario });
    return chamber.advanceTo(startMs + DAY_MS - 1).map(hottest);
  });
}

/** A week of a tent that is shaded as it should be. */
export function wellShaded(seed: number, stepMs: number): Measurement[] {
  const scenario = { kind: 'steady' } as const;
  const fixed = { seed, zone: ZONE, closedMs: MIDNIGHT_MS, startMs: MIDNIGHT_MS, stepMs, filmProbe: false, scenario };
  return [...simulateChamber({ ...fixed, endMs: MIDNIGHT_MS + DAYS * DAY_MS })].map(hottest);
}

/** A week under a shade that keeps off 42 to 60 % of the sun, another share every day: it warms over hours, to near the limit or past it. */
export function thinShade(seed: number, stepMs: number): Measurement[] {
  const tent = startTent(seed);
  const readings: Measurement[] = [];
  const endMs = MIDNIGHT_MS + DAYS * DAY_MS;
  for (let timeMs = MIDNIGHT_MS - 6 * HOUR_MS; timeMs <= endMs; timeMs += SUB_STEP_MS) {
    tent.move(timeMs);
    const isDue = timeMs >= MIDNIGHT_MS && (timeMs - MIDNIGHT_MS) % stepMs === 0;
    if (isDue) readings.push(hottest({ timeMs, canopy: tent.probes.read().canopy }));
  }
  return readings;
}

const SUB_STEP_MS = 10 * SECOND_MS;

function startTent(seed: number) {
  const weatherAt = createWeather(seed, ZONE);
  const noise = createNoise(seed);
  const probes = createProbes(seed, false);
  let state: TentState = { ...freshTent };
  let foggerOn = false;
  let shade = 0.5;
  return {
    probes,
    move(timeMs: number): void {
      if ((timeMs - MIDNIGHT_MS) % DAY_MS === 0) shade = 0.42 + 0.18 * noise.uniform();
      const weather = weatherAt(timeMs);
      const humidity = humidityOf(state.airTemperature, state.humidityRatio);
      foggerOn = humidity < 95.5 || (foggerOn && humidity < 97.5);
      const benchHeatWm2 = Math.min(150, Math.max(0, 75 * (22 - state.airTemperature)));
      const { houseTemperature, houseHumidityRatio } = weather;
      const sunWm2 = weather.sunWm2 * 0.65 * (1 - shade);
      const inputs = { houseTemperature, houseHumidityRatio, sunWm2, foggerOn, gapPercent: 0, benchHeatWm2 };
      state = advanceTent(state, inputs, SUB_STEP_MS / SECOND_MS).state;
      probes.follow(state, weather, SUB_STEP_MS / SECOND_MS);
    },
  };
}

const freshTent: TentState = {
  airTemperature: 21,
  humidityRatio: ratioOf(21, 90),
  filmTemperature: 20,
  benchTemperature: 21,
  floorWaterKg: 0.2,
  filmWaterKg: 0,
};

interface CanopyReading {
  readonly timeMs: number;
  readonly canopy: readonly [{ readonly temperature: number }, { readonly temperature: number }];
}

function hottest({ timeMs, canopy }: CanopyReading): Measurement {
  return { timeMs, value: Math.max(canopy[0].temperature, canopy[1].temperature) };
}
