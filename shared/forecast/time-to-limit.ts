// When will a quantity pass a limit? A time with an interval, and the chance that it happens within a horizon at all.
import { passedBy } from './first-passage.ts';
import { advanceTrend } from './local-linear-trend.ts';
import type { Mixture, MixtureModel } from './trend-mixture.ts';

export interface WatchedLimit {
  readonly limit: number;
  /** `high`: passed from below, by rising; `low`: from above, by falling. */
  readonly side: 'high' | 'low';
}

/** Minutes count from `asOfMs`, the time of the last measurement. */
export interface TimeToLimit {
  readonly asOfMs: number;
  readonly limit: number;
  /** Chance that the limit is passed within the horizon, 0–1. */
  readonly probability: number;
  /** As likely sooner as later; null = more likely not within two hours. */
  readonly minutes: number | null;
  /** In one case of ten it is sooner; null = less than one in ten within two hours. */
  readonly low: number | null;
  /** In one case of ten it is later, or never; null = not within two hours. */
  readonly high: number | null;
}

/** No trend of a tent says anything about what is further ahead (ours). */
const FURTHEST_MINUTES = 120;
/** Less likely than this is not worth the search for a time. */
const HARDLY = 0.1;
const EARLY = 0.1;
const MIDDLE = 0.5;
const LATE = 0.9;

/** Chance (0–1) that the limit is passed within `minutes` of the last measurement; 1 when the trend or that measurement is beyond it. */
export function chanceWithin(mixture: Mixture, model: MixtureModel, watched: WatchedLimit, minutes: number): number {
  const worse = watched.side === 'high' ? 1 : -1;
  if (worse * (mixture.value - watched.limit) > 0) return 1;
  let chance = 0;
  for (let i = 0; i < mixture.trends.length; i++) {
    const part = mixture.trends[i];
    const temper = model.tempers[i];
    if (part === undefined || temper === undefined) continue;
    const later = advanceTrend(part.trend, minutes, temper);
    const distance = worse * (watched.limit - part.trend.level);
    const gain = worse * (later.level - part.trend.level);
    chance += part.weight * passedBy(distance, gain, Math.sqrt(later.levelVariance));
  }
  return chance;
}

/** The chance within the horizon and, unless it is hardly there, the time with the interval that holds eight cases of ten. */
export function timeToLimit(
  mixture: Mixture,
  model: MixtureModel,
  watched: WatchedLimit,
  horizonMinutes: number,
): TimeToLimit {
  const chance = (minutes: number) => chanceWithin(mixture, model, watched, minutes);
  const probability = chance(horizonMinutes);
  const known = { asOfMs: mixture.timeMs, limit: watched.limit, probability };
  if (probability < HARDLY) return { ...known, minutes: null, low: null, high: null };
  return { ...known, minutes: reached(chance, MIDDLE), low: reached(chance, EARLY), high: reached(chance, LATE) };
}

/** The first time at which a chance is reached, to a hundredth of a minute; null = not within the furthest. */
function reached(chance: (minutes: number) => number, wanted: number): number | null {
  let before = 0;
  let after = 0.25;
  while (chance(after) < wanted) {
    if (after >= FURTHEST_MINUTES) return null;
    before = after;
    after = Math.min(FURTHEST_MINUTES, after * 1.3);
  }
  while (after - before > 0.01) {
    const middle = (before + after) / 2;
    if (chance(middle) < wanted) before = middle;
    else after = middle;
  }
  return after;
}
