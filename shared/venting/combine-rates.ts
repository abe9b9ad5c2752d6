// One rate from several windows at the same gap. Wind and weather make them differ by more than their own errors say, and the result knows it.

export interface RateEstimate {
  readonly ratePerHour: number;
  readonly rateError: number;
}

export interface CombinedRate extends RateEstimate {
  /** Share of each estimate in the result; they add up to 1. */
  readonly weights: readonly number[];
}

/** An exact fit has no error to weigh by; this stands in, 1/h. */
const LEAST_ERROR = 1e-9;

/**
 * The mean weighted by 1/(error² + τ²), τ² being the scatter between windows that their errors do not explain: random effects after
 * DerSimonian & Laird 1986 (formula from memory). One estimate comes back as it is. Needs at least one.
 */
export function combineRates(estimates: readonly RateEstimate[]): CombinedRate {
  const variances = estimates.map(({ rateError }) => Math.max(rateError, LEAST_ERROR) ** 2);
  const scatter = scatterBetween(estimates, variances);
  const precisions = variances.map((variance) => 1 / (variance + scatter));
  const total = sum(precisions);
  const weights = precisions.map((one) => one / total);
  return { ratePerHour: weightedMean(estimates, weights), rateError: Math.sqrt(1 / total), weights };
}

function scatterBetween(estimates: readonly RateEstimate[], variances: readonly number[]): number {
  const precisions = variances.map((variance) => 1 / variance);
  const total = sum(precisions);
  const mean = weightedMean(
    estimates,
    precisions.map((one) => one / total),
  );
  const heterogeneity = sum(estimates.map(({ ratePerHour }, i) => (precisions[i] ?? 0) * (ratePerHour - mean) ** 2));
  const scale = total - sum(precisions.map((one) => one * one)) / total;
  return scale > 0 ? Math.max(0, (heterogeneity - (estimates.length - 1)) / scale) : 0;
}

function weightedMean(estimates: readonly RateEstimate[], weights: readonly number[]): number {
  return sum(estimates.map(({ ratePerHour }, i) => ratePerHour * (weights[i] ?? 0)));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
