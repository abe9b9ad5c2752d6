// From the log of gap changes to the windows that are fitted: what followed each change, for as long as nothing else interfered.
import type { ClimateSample } from '../exposure/day-figures.ts';
import { HOUR_MS, MINUTE_MS } from '../units.ts';
import { LEAST_READINGS } from './fit-rate.ts';
import { type ChamberPoint, type HouseLine, layHouseUnder } from './house-line.ts';
import { ratioOfAir, ratioSeries } from './humidity-ratio-series.ts';
import type { WindowSeries } from './relaxation-model.ts';
import type { Refusal } from './why-not.ts';

/** An entry of a batch's log. A `gap` entry says how far the tent is open from then on, 0–100 %. */
export interface VentLogEntry {
  readonly atMs: number;
  readonly kind: string;
  readonly gapPercent: number | null;
}

/**
 * What is known of a chamber over a time. `chamber` and `house` hold trusted readings only, in order of time, the chamber's from the same
 * probe or probes throughout: a change of probe looks like air on the move. `untilMs` is where the record ends.
 */
export interface ExchangeRecord {
  readonly log: readonly VentLogEntry[];
  readonly chamber: readonly ClimateSample[];
  readonly house: readonly ClimateSample[];
  readonly altitudeM: number;
  readonly silenceMs: number;
  readonly untilMs: number;
}

export interface ExchangeWindow {
  readonly gapPercent: number;
  readonly fromMs: number;
  readonly toMs: number;
  readonly series: WindowSeries;
  /** The last reading before the change, and how long after the change the series begins; null = none below the sensor's top. */
  readonly before: { readonly ratio: number; readonly hoursFromChange: number } | null;
}

/** A change of the gap that says nothing, and why. */
export interface LeftOutChange {
  readonly gapPercent: number;
  readonly atMs: number;
  readonly refusal: Refusal;
}

export interface CutWindows {
  readonly windows: readonly ExchangeWindow[];
  readonly unusable: readonly LeftOutChange[];
}

/** Left out after a change, until the sensor's own lag (usually under a minute) and the crew's hands are out of it (ours). */
const SETTLE_MS = 3 * MINUTE_MS;
/** Wetness and warmth of plants and film are taken as steady over a window: they are so for about this long (ours). */
export const LONGEST_WINDOW_MS = 2 * HOUR_MS;
/** From here up a sensor shows its top and not the air (notes on sensors in wet air). */
export const SENSOR_TOP = 99.5;

interface Span {
  readonly gapPercent: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * A window runs from three minutes after a change of the gap to the next change, the next misting, two hours, or the end of house readings,
 * whichever is first; of it the longest stretch counts in which the humidity is below the sensor's top. Gap entries that change nothing are
 * passed over; so are other entries of the log but misting.
 */
export function cutWindows(record: ExchangeRecord): CutWindows {
  const house = { points: ratioSeries(record.house, record.altitudeM), silenceMs: record.silenceMs };
  const cut = spansOf(record).map((span) => cutOne(span, record, house));
  return {
    windows: cut.flatMap((one) => ('series' in one ? one : [])),
    unusable: cut.flatMap((one) => ('refusal' in one ? one : [])),
  };
}

/** The changes of the gap in order of time, repeats of the same gap left out; of two at one instant the later in the log stands. */
export function gapChanges(log: readonly VentLogEntry[]): { readonly atMs: number; readonly gapPercent: number }[] {
  const gaps = log
    .flatMap(({ atMs, kind, gapPercent }) => (kind === 'gap' && gapPercent !== null ? { atMs, gapPercent } : []))
    .sort((a, b) => a.atMs - b.atMs)
    .filter(({ atMs }, i, all) => all[i + 1]?.atMs !== atMs);
  return gaps.filter(({ gapPercent }, i) => gapPercent !== gaps[i - 1]?.gapPercent);
}

function spansOf({ log, untilMs }: ExchangeRecord): Span[] {
  const changes = gapChanges(log);
  const mists = log.filter(({ kind }) => kind === 'mist').map(({ atMs }) => atMs);
  return changes.map(({ atMs, gapPercent }, i) => {
    const mistMs = Math.min(...mists.filter((ms) => ms > atMs));
    const nextMs = changes[i + 1]?.atMs ?? untilMs;
    return { gapPercent, fromMs: atMs, toMs: Math.min(nextMs, mistMs, atMs + LONGEST_WINDOW_MS, untilMs) };
  });
}

function cutOne(span: Span, record: ExchangeRecord, house: HouseLine): ExchangeWindow | LeftOutChange {
  const { gapPercent, fromMs, toMs } = span;
  const within = record.chamber.filter(
    ({ timeMs, temperature, humidity }) =>
      timeMs >= fromMs + SETTLE_MS && timeMs < toMs && temperature !== null && humidity !== null,
  );
  const below = longestBelowTop(within);
  const refuse = (refusal: Refusal): LeftOutChange => ({ gapPercent, atMs: fromMs, refusal });
  if (below.length < LEAST_READINGS)
    return refuse(
      within.length >= LEAST_READINGS ? { why: 'saturated' } : { why: 'too-few-readings', readings: within.length },
    );
  const points = inOrder(chamberPoints(below, record.altitudeM));
  const series = layHouseUnder(points, house);
  if (series === null || series.values.length < LEAST_READINGS) return refuse({ why: 'no-house-air' });
  const lastMs = points[series.values.length - 1]?.timeMs ?? toMs;
  return { gapPercent, fromMs, toMs: lastMs, series, before: lastBefore(record, fromMs, points[0]?.timeMs ?? fromMs) };
}

function lastBefore(record: ExchangeRecord, changeMs: number, seriesMs: number): ExchangeWindow['before'] {
  const { chamber, silenceMs, altitudeM } = record;
  const last = chamber.findLast(({ timeMs, temperature, humidity }) => {
    return timeMs <= changeMs && changeMs - timeMs <= silenceMs && temperature !== null && humidity !== null;
  });
  if (last === undefined || (last.humidity ?? 0) >= SENSOR_TOP) return null;
  const ratio = ratioOfAir(last.temperature ?? 0, last.humidity ?? 0, altitudeM);
  return { ratio, hoursFromChange: (seriesMs - changeMs) / HOUR_MS };
}

function chamberPoints(samples: readonly ClimateSample[], altitudeM: number): ChamberPoint[] {
  return samples.flatMap(({ timeMs, temperature, humidity }) => {
    if (temperature === null || humidity === null) return [];
    const ratio = ratioOfAir(temperature, humidity, altitudeM);
    return { timeMs, ratio, saturated: ratioOfAir(temperature, 100, altitudeM) };
  });
}

function longestBelowTop(samples: readonly ClimateSample[]): readonly ClimateSample[] {
  let [from, longestFrom, longest] = [0, 0, 0];
  samples.forEach(({ humidity }, i) => {
    if (humidity === null || humidity >= SENSOR_TOP) from = i + 1;
    else if (i + 1 - from > longest) [longestFrom, longest] = [from, i + 1 - from];
  });
  return samples.slice(longestFrom, longestFrom + longest);
}

function inOrder<P extends { readonly timeMs: number }>(points: readonly P[]): P[] {
  return points.filter(({ timeMs }, i) => i === 0 || timeMs > (points[i - 1]?.timeMs ?? 0));
}
