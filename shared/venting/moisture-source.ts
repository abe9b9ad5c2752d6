// What plants and film give off, from the newest window that shows it, and which older windows knew the same source.
import type { ExchangeWindow } from './cut-windows.ts';
import type { RateFit } from './fit-rate.ts';

/** A window with its fit. */
export interface FittedWindow {
  readonly window: ExchangeWindow;
  readonly fit: RateFit;
}

/**
 * The source s = conductance · (what the chamber's air would hold if saturated − what house air holds). Wet leaves, trays and film give off in
 * proportion to what the air lacks; that is the same thing written so that s does not hang on the humidity that is sought.
 */
export interface MoistureSource {
  /** 1/h. */
  readonly conductancePerHour: number;
  /** Standard error, with how much the conductance differed between windows. */
  readonly standardError: number;
  /** s at the end of the newest window, kg of water to 1 kg of dry air in an hour. */
  readonly perHour: number;
  /** Index of its gap among the levels, and the share of its window in that level's rate. */
  readonly level: number;
  readonly shareOfLevel: number;
  /** Standard error of the rate of its own window, and d(conductance)/d(rate) there: the two err together. */
  readonly rateError: number;
  readonly slopeOnRate: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** A conductance beyond this factor of the newest, and beyond chance, is another source: a wet film gives off several times as much (ours). */
const LARGEST_FACTOR = 2;
/** Beyond chance: this many standard errors. */
const BEYOND_CHANCE = 2;

/** Newest window first. */
export function newestFirst(fitted: readonly FittedWindow[]): FittedWindow[] {
  return [...fitted].sort((a, b) => b.window.toMs - a.window.toMs);
}

/** True where two windows can have had the same source. */
export function isSameSource(one: RateFit, other: RateFit): boolean {
  const apart = Math.abs(one.source - other.source);
  if (apart <= BEYOND_CHANCE * Math.hypot(one.sourceError, other.sourceError)) return true;
  return (
    one.source > 0 && other.source > 0 && Math.abs(Math.log(one.source / other.source)) <= Math.log(LARGEST_FACTOR)
  );
}

/** The source as it was in the newest of the windows, its place among the levels given. */
export function describeSource(
  fitted: readonly FittedWindow[],
  newest: FittedWindow,
  place: { readonly level: number; readonly shareOfLevel: number },
): MoistureSource {
  const { fit, window } = newest;
  const { fromMs, toMs, series } = window;
  return {
    conductancePerHour: fit.source,
    standardError: Math.hypot(fit.sourceError, scatterBeyondError(fitted.map((one) => one.fit))),
    perHour: fit.source * (series.steps.at(-1)?.driveTo ?? 0),
    ...place,
    rateError: fit.rateError,
    slopeOnRate: fit.sourceSlope,
    fromMs,
    toMs,
  };
}

/** Standard deviation between windows that their own errors do not explain; needs two. */
function scatterBeyondError(fits: readonly RateFit[]): number {
  const mean = fits.reduce((sum, { source }) => sum + source, 0) / fits.length;
  const spread = fits.reduce((sum, { source }) => sum + (source - mean) ** 2, 0) / (fits.length - 1);
  const error = fits.reduce((sum, { sourceError }) => sum + sourceError ** 2, 0) / fits.length;
  return Math.sqrt(Math.max(0, spread - error));
}
