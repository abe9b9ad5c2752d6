// The rows of a chart's table: buckets taken together so that a person can read them, minimum and maximum kept. Pure.
import { type Column, gapRuns, type StripData } from './strip-data.ts';

export interface Triple {
  readonly min: number | null;
  readonly mean: number | null;
  readonly max: number | null;
}

export interface TableRow {
  readonly startSec: number;
  /** Nothing was heard in it for longer than a probe may be silent. */
  readonly isGap: boolean;
  readonly temperature: Triple;
  readonly humidity: Triple;
  readonly temperatureLow: number | null;
  readonly temperatureHigh: number | null;
  readonly humidityLow: number | null;
  readonly humidityHigh: number | null;
  readonly house: number | null;
  readonly houseTemperature: number | null;
  readonly badShare: number | null;
}

function heard(column: Column, from: number, to: number): readonly number[] {
  return column.slice(from, to).filter((value) => value !== null);
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function extreme(values: readonly number[], pick: (...values: number[]) => number): number | null {
  return values.length === 0 ? null : pick(...values);
}

/** Everything, where no window is given. */
const endless = { fromSec: Number.NEGATIVE_INFINITY, toSec: Number.POSITIVE_INFINITY };

/** At most `most` rows of the buckets that a window touches, oldest first, up to now (all of a plan); gaps stay null. */
export function tableRows(data: StripData, most: number, { fromSec, toSec } = endless): readonly TableRow[] {
  const { series, nowSec, starts } = data;
  const end = Math.min(toSec, nowSec ?? toSec);
  const first = starts.findIndex((start) => start + data.bucketSeconds > fromSec);
  const past = starts.filter((start) => start <= end).length;
  if (first < 0 || past <= first) return [];
  const size = Math.max(1, Math.ceil((past - first) / most));
  const gaps = gapRuns(data);
  const rows: TableRow[] = [];
  for (let from = first; from < past; from += size) {
    const to = Math.min(past, from + size);
    const triple = (part: { min: Column; mean: Column; max: Column }): Triple => ({
      min: extreme(heard(part.min, from, to), Math.min),
      mean: mean(heard(part.mean, from, to)),
      max: extreme(heard(part.max, from, to), Math.max),
    });
    rows.push({
      startSec: data.starts[from] ?? data.fromSec,
      isGap: gaps.some((gap) => gap.from < to && gap.to > from),
      temperature: triple(series.temperature),
      humidity: triple(series.humidity),
      temperatureLow: series.corridor.temperature.low[from] ?? null,
      temperatureHigh: series.corridor.temperature.high[from] ?? null,
      humidityLow: series.corridor.humidity.low[from] ?? null,
      humidityHigh: series.corridor.humidity.high[from] ?? null,
      house: mean(heard(series.houseHumidity, from, to)),
      houseTemperature: mean(heard(series.houseTemperature, from, to)),
      badShare: mean(heard(series.badShare, from, to)),
    });
  }
  return rows;
}
