// Several local linear trends side by side, each for another temper of the air (calm, stirred, rough), weighted by how well each has lately
// foretold the next reading. One trend alone is either too slow for a tent left in the sun or cries wolf in a breathing house.
import { MINUTE_MS } from '../units.ts';
import {
  advanceTrend,
  beginTrend,
  correctTrend,
  type Measurement,
  type Trend,
  type TrendModel,
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
  const next: Trend[] = [];
  const beliefs: number[] = [];
  for (const [i, temper] of model.tempers.entries()) {
    const known = memory.trends[i];
    // A memory kept by a program with fewer tempers has no word on the others.
    if (known === undefined) return beginMixture(measured, model);
    const foretold = advanceTrend(known.trend, minutes, temper);
    beliefs.push(keep * Math.log(known.weight) + logLikelihood(foretold, value, temper));
    next.push(correctTrend(foretold, measured, temper));
  }
  const weights = normalise(beliefs, model.openMind);
  return { timeMs, value, trends: next.map((trend, i) => ({ trend, weight: weights[i] ?? 0 })) };
}

function beginMixture({ timeMs, value }: Measurement, { tempers }: MixtureModel): Mixture {
  const weight = 1 / tempers.length;
  return { timeMs, value, trends: tempers.map((temper) => ({ trend: beginTrend({ timeMs, value }, temper), weight })) };
}

/** Up to a constant that is the same for every temper. */
function logLikelihood(foretold: Trend, value: number, temper: TrendModel): number {
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
