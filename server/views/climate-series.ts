// The series behind a chart: per bucket minimum, mean and maximum, so that a spike never vanishes at a wider zoom; gaps stay gaps.
import type { ClimateSeries } from '../../shared/api/chambers.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { calibratedBuckets } from '../calibrated-buckets.ts';
import type { BucketValue, ClimateBucket, Placement, Store } from '../store/store.ts';
import { calibrationsOf } from '../watch/probe-book.ts';
import { rounded } from './rounded.ts';

export interface SeriesQuery {
  readonly fromMs: number;
  readonly toMs: number;
  readonly points: number;
}

export interface Grid {
  readonly fromMs: number;
  readonly bucketMs: number;
  readonly count: number;
}

/** At most `points` buckets that cover the stretch; whole minutes where a bucket is a minute or more: those are read from the roll-up. */
export function makeGrid({ fromMs, toMs, points }: SeriesQuery): Grid {
  const unit = (toMs - fromMs) / points >= MINUTE_MS ? MINUTE_MS : SECOND_MS;
  const start = Math.floor(fromMs / unit) * unit;
  const bucketMs = Math.max(1, Math.ceil((toMs - start) / points / unit)) * unit;
  return { fromMs: start, bucketMs, count: Math.max(1, Math.ceil((toMs - start) / bucketMs)) };
}

type Column = (number | null)[];
type Envelope = ClimateSeries['temperature'];

export interface MeasuredSeries {
  readonly temperature: Envelope;
  readonly humidity: Envelope;
  readonly badShare: Column;
}

/** Measured columns of one place (a chamber's canopy, or the house for `chamberId` null), all its probes put together. */
export async function measureSeries(store: Store, chamberId: string | null, grid: Grid): Promise<MeasuredSeries> {
  const toMs = grid.fromMs + grid.bucketMs * grid.count;
  const wanted = chamberId === null ? 'house' : 'canopy';
  const placements = (await store.probes.placements(chamberId, grid.fromMs, toMs)).filter(
    ({ place }) => place === wanted,
  );
  const histories = await store.calibrations.list();
  const buckets = new Map<number, ClimateBucket[]>();
  for (const placement of placements) {
    const probe = { probe: placement.probe, calibrations: calibrationsOf(histories, placement.probe) };
    for (const bucket of await calibratedBuckets(store.readings, probe, grid)) {
      if (!wasThere(placement, bucket, grid)) continue;
      buckets.set(bucket.index, [...(buckets.get(bucket.index) ?? []), bucket]);
    }
  }
  const at = (index: number) => buckets.get(index) ?? [];
  const indices = Array.from({ length: grid.count }, (_, index) => index);
  return {
    temperature: envelope(indices.map((index) => at(index).flatMap((one) => one.temperature ?? []))),
    humidity: envelope(indices.map((index) => at(index).flatMap((one) => one.humidity ?? []))),
    badShare: indices.map((index) => badShare(at(index))),
  };
}

/** A bucket belongs to a place when the probe stood there at any time of it. */
function wasThere({ fromMs, lastMs }: Placement, { index }: ClimateBucket, grid: Grid): boolean {
  const startMs = grid.fromMs + index * grid.bucketMs;
  return fromMs < startMs + grid.bucketMs && (lastMs === null || lastMs >= startMs);
}

function envelope(values: readonly BucketValue[][]): Envelope {
  return {
    min: values.map((all) => (all.length === 0 ? null : Math.min(...all.map((one) => one.min)))),
    mean: values.map((all) => meanOf(all)),
    max: values.map((all) => (all.length === 0 ? null : Math.max(...all.map((one) => one.max)))),
  };
}

// The mean of the probes' means: a probe that speaks more often does not weigh more.
function meanOf(values: readonly BucketValue[]): number | null {
  if (values.length === 0) return null;
  const sum = values.reduce((total, one) => total + one.sum / one.count, 0);
  return rounded(sum / values.length, 3);
}

function badShare(buckets: readonly ClimateBucket[]): number | null {
  const readings = buckets.reduce((sum, one) => sum + one.readings, 0);
  return readings === 0 ? null : buckets.reduce((sum, one) => sum + one.bad, 0) / readings;
}

/** The stretch a chart shows when nobody asks for another: the healing of a batch as planned, else the last day. */
export function defaultStretch(
  batch: { readonly openedMs: number; readonly endsMs: number | null } | null,
  nowMs: number,
): { fromMs: number; toMs: number } {
  if (batch === null) return { fromMs: nowMs - 24 * HOUR_MS, toMs: nowMs };
  // While a tent is being filled nobody knows the end: a chart of no length shows nothing.
  return { fromMs: batch.openedMs, toMs: Math.max(batch.endsMs ?? nowMs, nowMs, batch.openedMs + HOUR_MS) };
}

/** First instant and length of the buckets, as they are sent. */
export function gridHead(grid: Grid, nowMs: number): Pick<ClimateSeries, 'startsAt' | 'bucketSeconds' | 'now'> {
  return { startsAt: utcText(grid.fromMs), bucketSeconds: grid.bucketMs / SECOND_MS, now: utcText(nowMs) };
}
