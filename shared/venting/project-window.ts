// At a given rate, the start and the source that fit one window best: plain least squares of two columns, by orthogonalising them.
import { type ModelColumns, modelColumns, type WindowSeries } from './relaxation-model.ts';

/** Best start and source of a window at one rate, and what is left. */
export interface WindowProjection {
  readonly start: number;
  readonly source: number;
  readonly residuals: readonly number[];
  readonly squares: number;
  /** Variance of the source for errors of variance 1, the rate held fixed. */
  readonly sourceVariance: number;
}

/** How a window's curve answers to a small change of the rate, start and source fitted again: what the standard error of the rate rests on. */
export interface RateLeverage {
  /** Sum of squares of the part of ∂w/∂k that start and source cannot follow. */
  readonly squares: number;
  /** d(source)/dk along the best fit. */
  readonly sourceSlope: number;
}

export function projectWindow(series: WindowSeries, ratePerHour: number): WindowProjection {
  const columns = modelColumns(series, ratePerHour);
  const target = series.values.map((value, i) => value - (columns.mixed[i] ?? 0));
  const fit = solveTwo(columns, target);
  return { ...fit, squares: dot(fit.residuals, fit.residuals) };
}

export function rateLeverage(series: WindowSeries, ratePerHour: number, at: WindowProjection): RateLeverage {
  const step = 1e-4 * ratePerHour;
  const higher = curve(modelColumns(series, ratePerHour + step), at);
  const lower = curve(modelColumns(series, ratePerHour - step), at);
  const slope = higher.map((value, i) => (value - (lower[i] ?? 0)) / (2 * step));
  const { residuals, source } = solveTwo(modelColumns(series, ratePerHour), slope);
  return { squares: dot(residuals, residuals), sourceSlope: -source };
}

function curve(columns: ModelColumns, { start, source }: WindowProjection): number[] {
  return columns.mixed.map((mixed, i) => mixed + start * (columns.fading[i] ?? 0) + source * (columns.filling[i] ?? 0));
}

function solveTwo({ fading, filling }: ModelColumns, target: readonly number[]): Omit<WindowProjection, 'squares'> {
  const length = Math.sqrt(dot(fading, fading));
  const unit = fading.map((value) => value / length);
  const along = dot(unit, filling);
  const across = filling.map((value, i) => value - along * (unit[i] ?? 0));
  const acrossSquares = dot(across, across);
  const source = acrossSquares === 0 ? 0 : dot(across, target) / acrossSquares;
  const start = (dot(unit, target) - source * along) / length;
  const residuals = target.map((value, i) => value - start * (fading[i] ?? 0) - source * (filling[i] ?? 0));
  return { start, source, residuals, sourceVariance: 1 / acrossSquares };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}
