// Several local linear trends side by side, each for another temper of the air (calm, stirred, rough), weighted by how well each has lately
// foretold the next reading. One trend alone is either too slow for a tent left in the sun or cries wolf in a breathing house.
import { MINUTE_MS } from '../units.ts';
import {
  advanceTrend,
  type Measurement,
  noTrend,
  type Trend,
  type TrendModel,
  updateTrend,
} from './local-linear-trend.ts';

export interface MixtureModel {
  readonly tempers: readonly TrendModel[];
  /** How long a temper is remembered: after this many minutes the word of a reading counts for 1/e. */
  readonly remembersMinutes: number;
  /** Share of the belief that is always spread evenly, 0–1: no temper is ever ruled out. */
  readonly openMind: number;
  /** Everything begins anew after a longer silence. */
  readonly longestGapMs: number;
}

export interface WeightedTrend {
  readonly trend: Trend;
  /** 0–1; together 1. */
  readonly weight: number;
}

/** Plain JSON, of constant size; `null` = nothing has been measured yet. */
export type MixtureMemory = Mixture | null;

export interface Mixture {
  readonly timeMs: number;
  /** The last value taken in. */
  readonly value: number;
  /** One for each temper of the model, in its order. */
  readonly trends: readonly WeightedTrend[];
}

export const noMixture: MixtureMemory = null;

/**
 * Takes one measurement into the memory. One that is not later than the last, or is no finite number, changes nothing; after a longer gap than
 * the model allows everything begins anew. Weights follow Bayes with forgetting (dynamic model averaging, Raftery et al. 2010, Technometrics
 * 52:52, from memory): weight^keep · likelihood of the reading, then a little spread evenly.
 */
export function updateMixture(memory: MixtureMemory, measured: Measurement, model: MixtureModel): MixtureMemory {
  const { timeMs, value } = measured;
  if (!Number.isFinite(value)) return memory;
  if (memory === null || timeMs - memory.timeMs > model.longestGapMs) return beginMixture(measured, model);
  const minutes = (timeMs - memory.timeMs) / MINUTE_MS;
  if (minutes <= 0) return memory;
  const keep = Math.exp(-minutes / model.remembersMinutes);
  const beliefs = memory.trends.map(({ trend, weight }, i) => {
    const temper = model.tempers[i];
    return temper === undefined ? 0 : keep * Math.log(weight) + logLikelihood(trend, minutes, value, temper);
  });
  const weights = normalise(beliefs, model.openMind);
  const trends = memory.trends.map(({ trend }, i) => {
    const temper = model.tempers[i];
    const next = temper === undefined ? null : updateTrend(trend, measured, temper);
    return { trend: next ?? trend, weight: weights[i] ?? 0 };
  });
  return { timeMs, value, trends };
}

function beginMixture({ timeMs, value }: Measurement, { tempers }: MixtureModel): Mixture {
  const trends = tempers.flatMap((temper) => {
    const trend = updateTrend(noTrend, { timeMs, value }, temper);
    return trend === null ? [] : [{ trend, weight: 1 / tempers.length }];
  });
  return { timeMs, value, trends };
}

/** Up to a constant that is the same for every temper. */
function logLikelihood(trend: Trend, minutes: number, value: number, temper: TrendModel): number {
  const foretold = advanceTrend(trend, minutes, temper);
  const variance = foretold.levelVariance + temper.readingSd * temper.readingSd;
  const miss = value - foretold.level;
  return -0.5 * (Math.log(variance) + (miss * miss) / variance);
}

function normalise(logs: readonly number[], openMind: number): number[] {
  const top = Math.max(...logs);
  const raw = logs.map((log) => Math.exp(log - top));
  const sum = raw.reduce((total, one) => total + one, 0);
  return raw.map((one) => openMind / raw.length + ((1 - openMind) * one) / sum);
}
