// When will a quantity be beyond a limit? A time with an interval, and the chance of it within a horizon.
import { advanceTrend } from './local-linear-trend.ts';
import { normalBelow } from './normal-below.ts';
import type { Mixture, MixtureModel } from './trend-mixture.ts';

export interface WatchedLimit {
  readonly limit: number;
  /** `high`: beyond is above it; `low`: beyond is below it. */
  readonly side: 'high' | 'low';
}

/** Minutes count from `asOfMs`, the time of the last measurement. */
export interface TimeToLimit {
  readonly asOfMs: number;
  readonly limit: number;
  /** Chance that the quantity is beyond the limit at the end of the horizon, 0–1. */
  readonly probability: number;
  /** From then on it is more likely beyond the limit than not; null = not within two hours. */
  readonly minutes: number | null;
  /** From then on the chance is one in ten; null = not within two hours. */
  readonly low: number | null;
  /** From then on the chance is nine in ten; null = not within two hours. */
  readonly high: number | null;
}

/** No trend of a tent says anything about what is further ahead (ours). */
const FURTHEST_MINUTES = 120;
const EARLY = 0.1;
const MIDDLE = 0.5;
const LATE = 0.9;

/**
 * Chance (0–1) that the quantity is beyond the limit `minutes` after the last measurement, by the predictive distribution of the trends; 1 when
 * that measurement is beyond it already. In replay this chance was borne out; that of passing the limit at any time until then, as if the
 * quantity wandered without inertia, was twice too high.
 */
export function chanceAfter(mixture: Mixture, model: MixtureModel, watched: WatchedLimit, minutes: number): number {
  const worse = watched.side === 'high' ? 1 : -1;
  if (worse * (mixture.value - watched.limit) > 0) return 1;
  let chance = 0;
  for (let i = 0; i < mixture.trends.length; i++) {
    const part = mixture.trends[i];
    const temper = model.tempers[i];
    if (part === undefined || temper === undefined) continue;
    const { level, levelVariance } = advanceTrend(part.trend, minutes, temper);
    chance += part.weight * normalBelow((worse * (level - watched.limit)) / Math.sqrt(levelVariance));
  }
  return chance;
}

/** The chance at the end of the horizon, and the time with the interval from one to nine cases of ten. */
export function timeToLimit(
  mixture: Mixture,
  model: MixtureModel,
  watched: WatchedLimit,
  horizonMinutes: number,
): TimeToLimit {
  const chance = (minutes: number) => chanceAfter(mixture, model, watched, minutes);
  return {
    asOfMs: mixture.timeMs,
    limit: watched.limit,
    probability: chance(horizonMinutes),
    minutes: reached(chance, MIDDLE),
    low: reached(chance, EARLY),
    high: reached(chance, LATE),
  };
}

/** The first time at which a chance is reached, to a hundredth of a minute; null = not within the furthest. */
function reached(chance: (minutes: number) => number, wanted: number): number | null {
  if (chance(0) >= wanted) return 0;
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
