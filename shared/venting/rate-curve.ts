// Exchange rate against gap, from the gaps that were tried: never falling as the gap opens, and no further than a little beyond experience.
import type { LevelFit } from './fit-exchange.ts';

/** Rate at a gap, 1/h, with its standard error, and how much of each fitted level is in it: `rate = Σ weight · level rate`. */
export interface RateAtGap {
  readonly ratePerHour: number;
  readonly standardError: number;
  readonly weights: readonly number[];
}

export interface RateCurve {
  /** The gaps for which the curve answers, %. */
  readonly fromPercent: number;
  readonly toPercent: number;
  /** Null outside `fromPercent`–`toPercent`. */
  rateAt(gapPercent: number): RateAtGap | null;
}

/** Flow through an upright opening driven by warmth grows with its height to the power 1.5; wind makes it nearer to 1, a slanted film to 2 (ours). */
const POWER = 1.5;
const LOWEST_POWER = 1;
const HIGHEST_POWER = 2;
/** How far beyond the widest gap tried the curve is drawn, as a share of it (ours). */
const REACH = 1.5;
/** A fall between two levels of more than this many standard errors is no noise: something else than the gap changed. */
const LARGEST_FALL = 3;

interface Pool {
  readonly members: readonly number[];
  readonly ratePerHour: number;
  readonly precision: number;
}

/**
 * The curve through levels in order of gap: pooled where neighbours fall (isotonic regression, weights 1/SE²), between levels straight in
 * gap^1.5, beyond the widest on the line from the narrowest through it. What the power could be otherwise (1 to 2) is in the standard error,
 * and beyond the widest also a flow that grows from nothing.
 * Null when the rates fall by more than chance explains, or there are fewer than two levels.
 */
export function makeRateCurve(levels: readonly LevelFit[]): RateCurve | null {
  const [first, last] = [levels[0], levels.at(-1)];
  if (first === undefined || last === undefined || levels.length < 2) return null;
  const pooled = poolFalls(levels);
  const rates = pooled.map(({ ratePerHour }) => ratePerHour);
  const isChance = levels.every(
    ({ ratePerHour, standardError }, i) => Math.abs(ratePerHour - (rates[i] ?? 0)) <= LARGEST_FALL * standardError,
  );
  if (!isChance) return null;
  const toPercent = Math.min(100, Math.max(last.gapPercent, Math.floor(REACH * last.gapPercent)));
  return {
    fromPercent: first.gapPercent,
    toPercent,
    rateAt: (gapPercent) => {
      if (gapPercent < first.gapPercent || gapPercent > toPercent) return null;
      return joinLevels(levels, pooled, gapPercent);
    },
  };
}

/** The pool of each level, by the pool-adjacent-violators rule. */
function poolFalls(levels: readonly LevelFit[]): Pool[] {
  const pools: Pool[] = [];
  levels.forEach(({ ratePerHour, standardError }, index) => {
    let pool: Pool = { members: [index], ratePerHour, precision: 1 / Math.max(standardError, 1e-9) ** 2 };
    for (
      let before = pools.at(-1);
      before !== undefined && before.ratePerHour > pool.ratePerHour;
      before = pools.at(-1)
    ) {
      pools.pop();
      pool = mergePools(before, pool);
    }
    pools.push(pool);
  });
  return pools.flatMap((pool) => pool.members.map(() => pool));
}

function mergePools(a: Pool, b: Pool): Pool {
  const precision = a.precision + b.precision;
  const ratePerHour = (a.precision * a.ratePerHour + b.precision * b.ratePerHour) / precision;
  return { members: [...a.members, ...b.members], ratePerHour, precision };
}

function joinLevels(levels: readonly LevelFit[], pooled: readonly Pool[], gapPercent: number): RateAtGap {
  const ends = endsAround(levels, gapPercent);
  const [low, high] = [pooled[ends.low], pooled[ends.high]];
  const [lowGap, highGap] = [levels[ends.low]?.gapPercent ?? 0, levels[ends.high]?.gapPercent ?? 0];
  const shareAt = (power: number) => (lowGap === highGap ? 0 : between(lowGap, highGap, gapPercent, power));
  const [a, b] = [low?.ratePerHour ?? 0, high?.ratePerHour ?? 0];
  const share = shareAt(POWER);
  const weights = levels.map((level, i) => (1 - share) * weightIn(low, level, i) + share * weightIn(high, level, i));
  const noise = weights.map((weight, i) => weight * (levels[i]?.standardError ?? 0));
  const shapes = [LOWEST_POWER, HIGHEST_POWER].map((power) => a + (b - a) * shareAt(power));
  // Beyond the widest a flat line would be a dangerous guess: that the flow keeps growing with the gap must stay possible.
  if (gapPercent > highGap) shapes.push(b * (gapPercent / highGap) ** POWER);
  const shape = (Math.max(...shapes) - Math.min(...shapes)) / 2;
  return { ratePerHour: a + (b - a) * share, standardError: Math.hypot(...noise, shape), weights };
}

/** The levels the rate lies between; beyond the widest, the narrowest and the widest. */
function endsAround(levels: readonly LevelFit[], gapPercent: number): { readonly low: number; readonly high: number } {
  const high = levels.findIndex((level) => level.gapPercent >= gapPercent);
  if (high === -1) return { low: 0, high: levels.length - 1 };
  return { low: levels[high]?.gapPercent === gapPercent ? high : high - 1, high };
}

function between(low: number, high: number, gap: number, power: number): number {
  return (gap ** power - low ** power) / (high ** power - low ** power);
}

/** How much of a level's own rate is in its pool's. */
function weightIn(pool: Pool | undefined, { standardError }: LevelFit, index: number): number {
  if (pool === undefined || !pool.members.includes(index)) return 0;
  return 1 / Math.max(standardError, 1e-9) ** 2 / pool.precision;
}
