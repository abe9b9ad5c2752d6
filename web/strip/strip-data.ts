// A climate series as the strip draws it: seconds along, one column per line, true gaps as null. Pure.
import type { ChartEvent, ClimateSeries } from '../../shared/api/chambers.ts';

export type Column = readonly (number | null)[];

export interface StripData {
  /** Start of each bucket, seconds since the epoch. */
  readonly starts: readonly number[];
  /** Middle of each bucket: where a mean is drawn. */
  readonly middles: readonly number[];
  readonly bucketSeconds: number;
  readonly fromSec: number;
  readonly toSec: number;
  /** Null for a plan that is not tied to a time. */
  readonly nowSec: number | null;
  readonly series: ClimateSeries;
  /** Where healing day 1 begins; null while the chamber is not closed. */
  readonly closedSec: number | null;
}

/** Prepares a series for drawing. `closedAt` sets the day cells. */
export function stripData(series: ClimateSeries, closedAt: string | null, isPlan = false): StripData {
  const fromSec = Date.parse(series.startsAt) / 1000;
  const step = series.bucketSeconds;
  const count = series.temperature.mean.length;
  const starts = Array.from({ length: count }, (_, index) => fromSec + index * step);
  return {
    starts,
    middles: starts.map((start) => start + step / 2),
    bucketSeconds: step,
    fromSec,
    toSec: fromSec + count * step,
    nowSec: isPlan ? null : Date.parse(series.now) / 1000,
    series,
    closedSec: closedAt === null ? null : Date.parse(closedAt) / 1000,
  };
}

/** Indices of values that stand alone between gaps: a line would not show them. */
export function isolatedIndices(column: Column): readonly number[] {
  const isGap = (index: number) => (column[index] ?? null) === null;
  return column.flatMap((value, index) => (value !== null && isGap(index - 1) && isGap(index + 1) ? [index] : []));
}

export interface Run {
  /** First index of the run. */
  readonly from: number;
  /** One past its last index. */
  readonly to: number;
}

/** Unbroken runs of indices for which `test` holds. */
export function runsWhere(count: number, test: (index: number) => boolean): readonly Run[] {
  const runs: Run[] = [];
  let from = -1;
  for (let index = 0; index <= count; index++) {
    const holds = index < count && test(index);
    if (holds && from < 0) from = index;
    if (!holds && from >= 0) {
      runs.push({ from, to: index });
      from = -1;
    }
  }
  return runs;
}

/** Runs of buckets before now in which neither temperature nor humidity was heard. */
export function gapRuns(data: StripData): readonly Run[] {
  const { nowSec, series } = data;
  if (nowSec === null) return [];
  // The bucket that holds "now" has only begun: it is not a gap yet.
  const isPast = (index: number) => (data.starts[index] ?? 0) + data.bucketSeconds <= nowSec;
  const isEmpty = (index: number) =>
    (series.temperature.mean[index] ?? null) === null && (series.humidity.mean[index] ?? null) === null;
  return runsWhere(data.starts.length, (index) => isPast(index) && isEmpty(index));
}

/** Events of one kind, oldest first. */
export function eventsOf(data: StripData, kind: ChartEvent['kind']): readonly ChartEvent[] {
  return data.series.events.filter((event) => event.kind === kind).sort((one, other) => (one.at < other.at ? -1 : 1));
}
