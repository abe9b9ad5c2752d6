// What lies ahead of a quantity as a cone: for some minutes the value in the middle and the two between which eight of ten come to lie.
// To be drawn, never to warn by: warnings have their own decision (heat-ahead.ts).
import { advanceTrend } from './local-linear-trend.ts';
import { normalBelow } from './normal-below.ts';
import type { Mixture, MixtureModel } from './trend-mixture.ts';

/** One place of the cone, in the quantity's own unit. */
export interface ConeStep {
  /** After the last measurement. */
  readonly minutes: number;
  /** One in ten lies below. */
  readonly low: number;
  readonly middle: number;
  /** One in ten lies above. */
  readonly high: number;
}

/** Minutes at which the cone is sent. It ends where the warning looks to: further ahead nothing was judged. */
export const CONE_MINUTES: readonly number[] = [0, 2, 5, 10, 15, 20];

interface Part {
  readonly weight: number;
  readonly level: number;
  readonly sd: number;
}

/** The predictive distribution of the trends at each of the `minutes` (0 or more), as its tenth, middle and ninetieth hundredth. */
export function foreseeCone(
  mixture: Mixture,
  model: MixtureModel,
  minutes: readonly number[] = CONE_MINUTES,
): readonly ConeStep[] {
  return minutes.map((ahead) => {
    const parts = partsAfter(mixture, model, ahead);
    return { minutes: ahead, low: quantile(parts, 0.1), middle: quantile(parts, 0.5), high: quantile(parts, 0.9) };
  });
}

function partsAfter({ trends }: Mixture, { tempers }: MixtureModel, minutes: number): readonly Part[] {
  return trends.flatMap(({ trend, weight }, i) => {
    const temper = tempers[i];
    if (temper === undefined) return [];
    const { level, levelVariance } = advanceTrend(trend, minutes, temper);
    return [{ weight, level, sd: Math.sqrt(levelVariance) }];
  });
}

/** Where a share of the weight lies below, to a thousandth, by halving. */
function quantile(parts: readonly Part[], share: number): number {
  const below = (value: number) =>
    parts.reduce((sum, { weight, level, sd }) => sum + weight * normalBelow((value - level) / sd), 0);
  let low = Math.min(...parts.map(({ level, sd }) => level - 6 * sd));
  let high = Math.max(...parts.map(({ level, sd }) => level + 6 * sd));
  while (high - low > 0.001) {
    const middle = (low + high) / 2;
    if (below(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
