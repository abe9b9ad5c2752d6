// How fast a chamber exchanges its air at each gap that was tried, and what plants and film give off, from the log and the readings after it:
// dw/dt = −k(gap)·(w − house) + s, with w the humidity ratio.
import { combineRates, type RateEstimate } from './combine-rates.ts';
import { cutWindows, type ExchangeRecord, type ExchangeWindow, gapChanges, type LeftOutChange } from './cut-windows.ts';
import type { RateFit, RateResult } from './fit-rate.ts';
import { fitWindow } from './fit-window.ts';
import {
  describeSource,
  type FittedWindow,
  isSameSource,
  type MoistureSource,
  newestFirst,
} from './moisture-source.ts';
import { makeRateCurve } from './rate-curve.ts';
import { studentT975 } from './student-t.ts';
import type { Refusal } from './why-not.ts';

/** One gap that was tried: its rate in 1/h (air exchange, and what wet surfaces take part in) with standard error and 95 % interval. */
export interface LevelFit {
  readonly gapPercent: number;
  readonly ratePerHour: number;
  readonly standardError: number;
  readonly interval: { readonly low: number; readonly high: number };
  /** The worst of its windows. */
  readonly r2: number;
  readonly readings: number;
  readonly windows: number;
}

export interface ExchangeFit {
  /** In order of gap. */
  readonly levels: readonly LevelFit[];
  readonly source: MoistureSource;
  /** The worst of the windows. */
  readonly r2: number;
  readonly readings: number;
  readonly windows: number;
  readonly leftOut: readonly LeftOutChange[];
}

export type ExchangeResult =
  | { readonly fit: ExchangeFit }
  | ({ readonly fit: null; readonly leftOut: readonly LeftOutChange[] } & Refusal);

/** What a sensor's lag of up to a minute may still leave in a rate of up to 15/h, as a share of it: 1.5 % where it was simulated (ours). */
const LAG_SHARE = 0.02;

/**
 * Fits every window on its own, then joins those of a gap. The source is free between windows, so that sun and night do not bend the rates;
 * within one it follows what the air lacks (`MoistureSource`). Windows with another source than the newest are left out: while a wet film
 * dries, rates say nothing of a dry one. At least two gaps must show their rate, and it must not fall as the gap opens. A constant offset of
 * a probe shifts the source and hardly the rates.
 */
export function fitExchange(record: ExchangeRecord): ExchangeResult {
  const work = fitExchangeStepwise(record);
  for (let step = work.next(); ; step = work.next()) if (step.done === true) return step.value;
}

/** The same, pausing after each window: whoever has other things to do may do them in between. */
export function* fitExchangeStepwise(record: ExchangeRecord): Generator<void, ExchangeResult, void> {
  // A batch is closed when its log begins: a lone entry that says so is no change.
  if (gapChanges(record.log).every(({ gapPercent }) => gapPercent === 0)) {
    return { fit: null, leftOut: [], why: 'gap-never-changed' };
  }
  const { fitted, leftOut } = yield* fitWindows(record);
  const newest = fitted[0];
  const gaps = [...new Set(fitted.map(({ window }) => window.gapPercent))].sort((a, b) => a - b);
  if (newest === undefined || gaps.length < 2) return tooFewGaps(gaps, leftOut);
  const levels = gaps.map((gapPercent) => fitLevel(gapPercent, fitted));
  if (makeRateCurve(levels) === null) return { fit: null, leftOut, why: 'not-monotone' };
  const readings = levels.reduce((sum, level) => sum + level.readings, 0);
  const fit = {
    levels: levels.map(({ weights: _, ...level }) => level),
    source: describeSource(fitted, newest, placeOf(newest, levels)),
    r2: Math.min(...levels.map(({ r2 }) => r2)),
    readings,
    windows: fitted.length,
    leftOut,
  };
  return { fit };
}

/** The windows with a good fit and the source of the newest of them, newest first; all others with their reason. */
function* fitWindows(
  record: ExchangeRecord,
): Generator<void, { fitted: FittedWindow[]; leftOut: LeftOutChange[] }, void> {
  const { windows, unusable } = cutWindows(record);
  const results: { readonly window: ExchangeWindow; readonly result: RateResult }[] = [];
  for (const window of windows) {
    results.push({ window, result: fitWindow(window) });
    yield;
  }
  const good = newestFirst(
    results.flatMap(({ window, result }) => (result.fit === null ? [] : { window, fit: result.fit })),
  );
  const fitted = good.filter(({ fit }) => good[0] !== undefined && isSameSource(fit, good[0].fit));
  const leftOut = [
    ...unusable,
    ...results.flatMap(({ window, result }) => (result.fit === null ? leave(window, result) : [])),
    ...good.filter((one) => !fitted.includes(one)).map(({ window }) => leave(window, { why: 'other-source' })),
  ];
  return { fitted, leftOut: leftOut.sort((a, b) => a.atMs - b.atMs) };
}

interface WeighedLevel extends LevelFit {
  /** Of its windows, newest first. */
  readonly weights: readonly number[];
}

function fitLevel(gapPercent: number, fitted: readonly FittedWindow[]): WeighedLevel {
  const fits = fitted.filter(({ window }) => window.gapPercent === gapPercent).map(({ fit }) => fit);
  const { ratePerHour, rateError, weights } = combineRates(fits.map(withLagError));
  const freedom = fits.reduce((sum, fit) => sum + fit.degreesOfFreedom, 0);
  const factor = Math.exp((studentT975(freedom) * rateError) / ratePerHour);
  return {
    gapPercent,
    ratePerHour,
    standardError: rateError,
    interval: { low: ratePerHour / factor, high: ratePerHour * factor },
    r2: Math.min(...fits.map(({ r2 }) => r2)),
    readings: fits.reduce((sum, { readings }) => sum + readings, 0),
    windows: fits.length,
    weights,
  };
}

function withLagError({ ratePerHour, rateError }: RateFit): RateEstimate {
  return { ratePerHour, rateError: Math.hypot(rateError, LAG_SHARE * ratePerHour) };
}

function placeOf({ window }: FittedWindow, levels: readonly WeighedLevel[]) {
  const level = levels.findIndex(({ gapPercent }) => gapPercent === window.gapPercent);
  return { level, shareOfLevel: levels[level]?.weights[0] ?? 1 };
}

function leave({ gapPercent, fromMs }: ExchangeWindow, refusal: Refusal): LeftOutChange {
  return { gapPercent, atMs: fromMs, refusal };
}

/** Where no gap shows its rate, the newest change says why; where one does, that it takes two. */
function tooFewGaps(gaps: readonly number[], leftOut: readonly LeftOutChange[]): ExchangeResult {
  const newest = leftOut.at(-1);
  if (gaps.length === 0 && newest !== undefined) return { fit: null, leftOut, ...newest.refusal };
  return { fit: null, leftOut, why: 'too-few-gaps', gapPercent: gaps[0] ?? 0 };
}
