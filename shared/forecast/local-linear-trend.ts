// A local linear trend, streamed: level and slope of one quantity now, and how sure they are. A Kalman filter in continuous time, so that
// uneven steps need no grid. Pure; its memory is constant in size, plain JSON, and survives a restart. It knows no limit and no alarm.
import { MINUTE_MS } from '../units.ts';
import { motionOver } from './trend-motion.ts';

/** How a quantity moves and how it is measured. Times in minutes, values in the quantity's own unit. */
export interface TrendModel {
  /** Standard deviation of one reading about the true value. */
  readonly readingSd: number;
  /** How far the level wanders by itself in a minute, standard deviation. */
  readonly levelWalk: number;
  /** How far the slope (unit per minute) wanders in a minute, standard deviation. */
  readonly slopeWalk: number;
  /** A slope is expected to fade: after this many minutes 1/e of it is left. `Infinity` = it goes on for ever. */
  readonly slopeLastsMinutes: number;
  /** Standard deviation of the slope before anything is known of it, unit per minute. */
  readonly firstSlopeSd: number;
  /** Nothing is carried over a longer silence: the trend begins anew. */
  readonly longestGapMs: number;
}

/** Level and slope at `timeMs` with their variances and covariance. */
export interface Trend {
  readonly timeMs: number;
  readonly level: number;
  readonly slopePerMinute: number;
  readonly levelVariance: number;
  readonly covariance: number;
  readonly slopeVariance: number;
}

/** null = nothing has been measured yet. */
export type TrendMemory = Trend | null;

export const noTrend: TrendMemory = null;

export interface Measurement {
  readonly timeMs: number;
  readonly value: number;
}

/**
 * Takes one measurement into the memory. One that is not later than the last, or is no finite number, changes nothing; after a gap longer
 * than the model allows the trend begins anew at the value. Kalman filter: predict over the step, then correct by the innovation.
 */
export function updateTrend(memory: TrendMemory, { timeMs, value }: Measurement, model: TrendModel): TrendMemory {
  if (!Number.isFinite(value)) return memory;
  if (memory === null) return beginTrend({ timeMs, value }, model);
  const stepMs = timeMs - memory.timeMs;
  if (stepMs <= 0) return memory;
  if (stepMs > model.longestGapMs) return beginTrend({ timeMs, value }, model);
  return correctTrend(advanceTrend(memory, stepMs / MINUTE_MS, model), { timeMs, value }, model);
}

/**
 * The trend `minutes` later (0 or more) with nothing measured meanwhile: the predictive distribution of level and slope. The slope is an
 * Ornstein–Uhlenbeck process and the level its integral plus a random walk (the continuous-time correlated random walk of Johnson et al. 2008,
 * Ecology 89:1208, formulas from memory, checked in the tests against steps too small to matter).
 */
export function advanceTrend(trend: Trend, minutes: number, model: TrendModel): Trend {
  const { fade, reach, levelNoise, bothNoise, slopeNoise } = motionOver(minutes, model);
  const { level, slopePerMinute, levelVariance, covariance, slopeVariance } = trend;
  return {
    timeMs: trend.timeMs + minutes * MINUTE_MS,
    level: level + reach * slopePerMinute,
    slopePerMinute: fade * slopePerMinute,
    levelVariance: levelVariance + 2 * reach * covariance + reach * reach * slopeVariance + levelNoise,
    covariance: fade * (covariance + reach * slopeVariance) + bothNoise,
    slopeVariance: fade * fade * slopeVariance + slopeNoise,
  };
}

/** Begins with one measurement. */
export function beginTrend({ timeMs, value }: Measurement, model: TrendModel): Trend {
  return {
    timeMs,
    level: value,
    slopePerMinute: 0,
    levelVariance: model.readingSd ** 2,
    covariance: 0,
    slopeVariance: model.firstSlopeSd ** 2,
  };
}

/** A trend that was advanced to the time of a measurement, corrected by it. */
export function correctTrend(trend: Trend, { timeMs, value }: Measurement, { readingSd }: TrendModel): Trend {
  const { levelVariance, covariance, slopeVariance } = trend;
  const innovation = value - trend.level;
  const spread = levelVariance + readingSd * readingSd;
  // Without any doubt about the level there is nothing to learn from a reading.
  if (spread <= 0) return { ...trend, timeMs };
  const levelGain = levelVariance / spread;
  const slopeGain = covariance / spread;
  return {
    // The instant itself, not the sum of steps that rounding carries away from it.
    timeMs,
    level: trend.level + levelGain * innovation,
    slopePerMinute: trend.slopePerMinute + slopeGain * innovation,
    levelVariance: (1 - levelGain) * levelVariance,
    covariance: (1 - levelGain) * covariance,
    slopeVariance: slopeVariance - slopeGain * covariance,
  };
}
