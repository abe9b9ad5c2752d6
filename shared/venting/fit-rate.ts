// The rate, start and source of one window: least squares over the rate alone, since for every rate the other two are linear. It answers with
// how sure it is, or says why it cannot.
import { projectWindow, rateLeverage, type WindowProjection } from './project-window.ts';
import type { WindowSeries } from './relaxation-model.ts';
import { searchRate } from './search-rate.ts';
import { studentT975 } from './student-t.ts';
import type { Refusal } from './why-not.ts';

/** Errors are standard errors. */
export interface RateFit {
  readonly ratePerHour: number;
  readonly rateError: number;
  /** 95 %, even on a logarithmic scale: a rate is positive. */
  readonly interval: { readonly low: number; readonly high: number };
  readonly start: number;
  /** The g of the model, 1/h times the series' unit over the drive's. */
  readonly source: number;
  readonly sourceError: number;
  /** Standard error of the source if the rate were known, and d(source)/d(rate) along the fit: the two err together. */
  readonly sourceErrorAlone: number;
  readonly sourceSlope: number;
  /** Share of the readings' scatter about their mean that the fit explains. */
  readonly r2: number;
  readonly readings: number;
  readonly degreesOfFreedom: number;
  /** Standard deviation of a reading about the curve. */
  readonly residual: number;
}

export type RateResult = { readonly fit: RateFit } | ({ readonly fit: null } & Refusal);

/** Readings below which nothing is said of a window: three figures are fitted to it, and their error must be seen too (ours). */
export const LEAST_READINGS = 8;
/** Below this the curve does not describe what was measured (ours). */
const LEAST_R2 = 0.75;
/** What is still to fade when a window begins must stand out of the readings' noise by this factor; else the rate comes from anything else (ours). */
const LEAST_DECAY = 2;
/** Largest standard error of a rate as a share of it: some ± 50 % at 95 % (ours). */
const LARGEST_SHARE = 0.25;

/**
 * Fits one window. Standard errors are those of least squares, made larger by what neighbouring residuals have in common where the model is
 * only nearly right: √((1 + r)/(1 − r)) for their correlation r, where it is positive. They speak of this window; wind and another day may
 * move a rate by more. A sensor's lag shorter than 1/k does not bias the rate once the lag itself has faded.
 */
export function fitRate(series: WindowSeries): RateResult {
  const readings = series.values.length;
  if (readings < LEAST_READINGS) return { fit: null, why: 'too-few-readings', readings };
  const { ratePerHour, edge } = searchRate(series);
  if (edge === 'fast') return { fit: null, why: 'too-fast' };
  if (edge === 'slow') return { fit: null, why: 'too-slow' };
  const fit = describeFit(series, ratePerHour);
  if (fit.r2 < LEAST_R2) return { fit: null, why: 'poor-fit', percent: Math.round(100 * Math.max(0, fit.r2)) };
  if (Math.abs(stillToFade(series, fit)) < LEAST_DECAY * fit.residual) return { fit: null, why: 'no-decay' };
  const share = fit.rateError / ratePerHour;
  return share > LARGEST_SHARE ? { fit: null, why: 'uncertain', percent: Math.round(200 * share) } : { fit };
}

function describeFit(series: WindowSeries, ratePerHour: number): RateFit {
  const projection = projectWindow(series, ratePerHour);
  const { squares: leverage, sourceSlope } = rateLeverage(series, ratePerHour, projection);
  const degreesOfFreedom = series.values.length - 3;
  const perFreedom = projection.squares / degreesOfFreedom;
  const variance = perFreedom * commonFactor(projection);
  const rateError = Math.sqrt(variance / leverage);
  const sourceErrorAlone = Math.sqrt(variance * projection.sourceVariance);
  const factor = Math.exp((studentT975(degreesOfFreedom) * rateError) / ratePerHour);
  const scatter = squaresAboutMean(series.values);
  return {
    ratePerHour,
    rateError,
    interval: { low: ratePerHour / factor, high: ratePerHour * factor },
    start: projection.start,
    source: projection.source,
    sourceError: Math.hypot(sourceErrorAlone, sourceSlope * rateError),
    sourceErrorAlone,
    sourceSlope,
    r2: scatter === 0 ? 0 : 1 - projection.squares / scatter,
    readings: series.values.length,
    degreesOfFreedom,
    residual: Math.sqrt(perFreedom),
  };
}

/** How far the start is from the balance of that instant. */
function stillToFade({ steps }: WindowSeries, { start, source, ratePerHour }: RateFit): number {
  const { houseFrom, driveFrom } = steps[0] ?? { houseFrom: 0, driveFrom: 0 };
  return start - houseFrom - (source / ratePerHour) * driveFrom;
}

/** By how much the variance of a mean grows when neighbouring errors have the correlation r: (1 + r)/(1 − r), from 1 up. */
function commonFactor({ residuals, squares }: WindowProjection): number {
  if (squares === 0) return 1;
  const products = residuals.reduce((sum, value, i) => sum + value * (residuals[i - 1] ?? 0), 0);
  const correlation = Math.min(0.95, Math.max(0, products / squares));
  return (1 + correlation) / (1 - correlation);
}

function squaresAboutMean(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}
