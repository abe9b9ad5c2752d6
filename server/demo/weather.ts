// The air of the invented greenhouse and the sun on its roof: spring, mild, another day every day, the same for the same seed.
import { createLocalClock } from './local-time.ts';
import { ratioOf } from './moist-air.ts';
import { smoothNoiseAt } from './seeded-noise.ts';

export interface Weather {
  /** °C, about 16–24. */
  readonly houseTemperature: number;
  /** %RH, about 55–75. */
  readonly houseHumidity: number;
  /** kg/kg of dry air. */
  readonly houseHumidityRatio: number;
  /** Outdoors on the level, W/m², 0–700. */
  readonly sunWm2: number;
  /** The same with a clear sky. */
  readonly clearSunWm2: number;
}

/** Ours: a spring day with clocks on summer time. */
const SUNRISE_HOUR = 6.5;
const SUNSET_HOUR = 20;
const NOON_WM2 = 700;
const WARMEST_HOUR = 15.5;

/** Weather at any instant, in any order of asking. `seed` is a whole number; one nursery has one weather for all its chambers. */
export function createWeather(seed: number, zone: string): (timeMs: number) => Weather {
  const localTime = createLocalClock(zone);
  return (timeMs) => {
    const { day, hour } = localTime(timeMs);
    const position = day + hour / 24;
    const warmth = Math.cos((2 * Math.PI * (hour - WARMEST_HOUR)) / 24);
    const brightness = brightnessAt(seed, position);
    const houseTemperature = 19.6 + 2.6 * warmth * (0.6 + 0.5 * brightness) + spread(seed + 1, position, 1.2);
    const houseHumidity = 66 - 4 * warmth + spread(seed + 2, position, 4.5) + spread(seed + 3, position * 24, 1);
    const clearSunWm2 = clearSun(hour);
    return {
      houseTemperature,
      houseHumidity,
      houseHumidityRatio: ratioOf(houseTemperature, houseHumidity),
      sunWm2: clearSunWm2 * brightness,
      clearSunWm2,
    };
  };
}

/** W/m² under a clear sky at a local hour: half a sine wave between sunrise and sunset. */
function clearSun(hour: number): number {
  const share = (hour - SUNRISE_HOUR) / (SUNSET_HOUR - SUNRISE_HOUR);
  return share <= 0 || share >= 1 ? 0 : NOON_WM2 * Math.sin(Math.PI * share);
}

/** Share of the clear sky's sun, 0.25–1: the day's weather, with clouds that pass in about twenty minutes. */
function brightnessAt(seed: number, position: number): number {
  const ofTheDay = smoothNoiseAt(seed + 4, position);
  const cloud = smoothNoiseAt(seed + 5, position * 72);
  return Math.min(1, 0.25 + 0.65 * ofTheDay + 0.25 * cloud);
}

function spread(seed: number, position: number, half: number): number {
  return half * (2 * smoothNoiseAt(seed, position) - 1);
}
