// Readings of temperature and humidity as a series of humidity ratios, the quantity that mixes: air exchange is linear in it, not in %RH.
import { pressureAtAltitudeKpa } from '../air/standard-atmosphere.ts';
import { humidityRatio, saturationKpa, vapourKpa } from '../air/vapour.ts';
import type { ClimateSample } from '../exposure/day-figures.ts';

/** Ratio of the molar masses of water and dry air (ASHRAE Fundamentals 2017 ch. 1). */
const MASS_RATIO = 0.621945;

/** kg of water to 1 kg of dry air at an instant. */
export interface RatioPoint {
  readonly timeMs: number;
  readonly ratio: number;
}

/** The samples that have both halves, as humidity ratios at the site's altitude in m; in the order given. */
export function ratioSeries(samples: Iterable<ClimateSample>, altitudeM: number): RatioPoint[] {
  const points: RatioPoint[] = [];
  for (const { timeMs, temperature, humidity } of samples) {
    if (temperature === null || humidity === null) continue;
    points.push({ timeMs, ratio: ratioOfAir(temperature, humidity, altitudeM) });
  }
  return points;
}

/** Humidity ratio of air at °C, %RH and altitude in m. */
export function ratioOfAir(temperature: number, humidity: number, altitudeM: number): number {
  return humidityRatio(vapourKpa(temperature, humidity), pressureAtAltitudeKpa(altitudeM));
}

/** %RH of air with a humidity ratio at °C and altitude in m: the inverse of `ratioOfAir`, held to 0–100. */
export function humidityOfRatio(ratio: number, temperature: number, altitudeM: number): number {
  const held = Math.max(0, ratio);
  const vapour = (held * pressureAtAltitudeKpa(altitudeM)) / (MASS_RATIO + held);
  return Math.min(100, (100 * vapour) / saturationKpa(temperature));
}
