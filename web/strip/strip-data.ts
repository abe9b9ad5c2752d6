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

/** A column as it is drawn: null is a gap, undefined lies between two readings at their pace and breaks no line. */
export type DrawnColumn = readonly (number | null | undefined)[];

/** Nulls that last no longer than a probe may be silent become undefined. */
export function drawnColumn(column: Column, data: Pick<StripData, 'bucketSeconds' | 'series'>): DrawnColumn {
  const drawn: (number | null | undefined)[] = [...column];
  for (const run of runsWhere(column.length, (index) => (column[index] ?? null) === null))
    if (isBetweenReadings(run, data)) drawn.fill(undefined, run.from, run.to);
  return drawn;
}

function isBetweenReadings({ from, to }: Run, { bucketSeconds, series }: Pick<StripData, 'bucketSeconds' | 'series'>) {
  return (to - from) * bucketSeconds <= series.silenceSeconds;
}

/** Indices of values that stand alone between gaps: a line would not show them. */
export function isolatedIndices(column: DrawnColumn): readonly number[] {
  const neighbour = (index: number, by: -1 | 1) => {
    let at = index + by;
    while (at >= 0 && at < column.length && column[at] === undefined) at += by;
    return column[at] ?? null;
  };
  const isAlone = (index: number) => neighbour(index, -1) === null && neighbour(index, 1) === null;
  return column.flatMap((value, index) => (typeof value === 'number' && isAlone(index) ? [index] : []));
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

/** Runs of buckets before now in which neither temperature nor humidity was heard for longer than a probe may be silent. */
export function gapRuns(data: StripData): readonly Run[] {
  const { nowSec, series } = data;
  if (nowSec === null) return [];
  // The bucket that holds "now" has only begun: it is not a gap yet.
  const isPast = (index: number) => (data.starts[index] ?? 0) + data.bucketSeconds <= nowSec;
  const isEmpty = (index: number) =>
    (series.temperature.mean[index] ?? null) === null && (series.humidity.mean[index] ?? null) === null;
  const runs = runsWhere(data.starts.length, (index) => isPast(index) && isEmpty(index));
  return runs.filter((run) => !isBetweenReadings(run, data));
}

/** The bucket whose values hold at `index`: itself, or the nearest one heard where it only lies between two readings; null in a gap and ahead. */
export function heardIndex(data: StripData, index: number): number | null {
  const { temperature, humidity, silenceSeconds } = data.series;
  const isHeard = (at: number) => (temperature.mean[at] ?? null) !== null || (humidity.mean[at] ?? null) !== null;
  const isAhead = data.nowSec !== null && (data.starts[index] ?? 0) > data.nowSec;
  if (isHeard(index)) return index;
  if (isAhead || gapRuns(data).some(({ from, to }) => index >= from && index < to)) return null;
  const furthest = Math.ceil(silenceSeconds / data.bucketSeconds);
  for (let by = 1; by <= furthest; by++) for (const at of [index - by, index + by]) if (isHeard(at)) return at;
  return null;
}

/** Events of one kind, oldest first. */
export function eventsOf(data: StripData, kind: ChartEvent['kind']): readonly ChartEvent[] {
  return data.series.events.filter((event) => event.kind === kind).sort((one, other) => (one.at < other.at ? -1 : 1));
}
