// Buckets and means of a probe as they are after calibration. The store keeps and sums raw values; `calibrate` is the one formula, and it is
// put on minimum, mean and maximum of a bucket where that gives what correcting each reading would. Any other bucket is put together from its
// minutes, and such a minute from its readings: the answer is exact everywhere.
import { type Calibration, calibrate, isCorrectedAlike } from '../shared/readings/calibration.ts';
import { FLAG, type Flag, type Reading } from '../shared/readings/reading.ts';
import { MINUTE_MS } from '../shared/units.ts';
import type { BucketValue, ClimateBucket, Store } from './store/store.ts';

type RawReadings = Pick<Store['readings'], 'buckets' | 'range' | 'mean'>;

/** A probe and the entries that correct it. */
export interface CalibratedProbe {
  readonly probe: number;
  readonly calibrations: readonly Calibration[];
}

interface BucketQuery {
  readonly fromMs: number;
  readonly bucketMs: number;
  readonly count: number;
}

/** As `readings.buckets`, calibrated. */
export async function calibratedBuckets(
  readings: RawReadings,
  { probe, calibrations }: CalibratedProbe,
  query: BucketQuery,
): Promise<ClimateBucket[]> {
  const buckets = await readings.buckets(probe, query);
  if (calibrations.length === 0) return buckets;
  const corrected: ClimateBucket[] = [];
  for (const bucket of buckets) {
    const fromMs = query.fromMs + bucket.index * query.bucketMs;
    const span = { fromMs, toMs: fromMs + query.bucketMs };
    const isAlike = isCorrectedAlike(calibrations, span, bucket.humidity);
    const values = isAlike
      ? {
          temperature: correctTemperature(bucket, fromMs, calibrations),
          humidity: correctHumidity(bucket, fromMs, calibrations),
        }
      : await putTogether(readings, { probe, calibrations }, span);
    corrected.push({ ...bucket, ...values });
  }
  return corrected;
}

/** As `readings.mean`, calibrated: of whole minutes. */
export async function calibratedMean(
  readings: RawReadings,
  { probe, calibrations }: CalibratedProbe,
  fromMs: number,
  toMs: number,
): Promise<{ temperature: number | null; humidity: number | null }> {
  if (calibrations.length === 0) return readings.mean(probe, fromMs, toMs);
  const [first, end] = [fromMs, toMs].map((ms) => Math.floor(ms / MINUTE_MS) * MINUTE_MS);
  if (first === undefined || end === undefined || end <= first) return { temperature: null, humidity: null };
  const query = { fromMs: first, bucketMs: end - first, count: 1 };
  const [bucket] = await calibratedBuckets(readings, { probe, calibrations }, query);
  const meanOf = (value: BucketValue | null | undefined) => (value ? value.sum / value.count : null);
  return { temperature: meanOf(bucket?.temperature), humidity: meanOf(bucket?.humidity) };
}

type Values = Pick<ClimateBucket, 'temperature' | 'humidity'>;

function correctTemperature({ temperature }: ClimateBucket, timeMs: number, history: readonly Calibration[]) {
  return correctValue(
    temperature,
    (raw) => calibrate({ timeMs, temperature: raw, humidity: null }, history).temperature,
  );
}

function correctHumidity({ humidity }: ClimateBucket, timeMs: number, history: readonly Calibration[]) {
  return correctValue(humidity, (raw) => calibrate({ timeMs, temperature: null, humidity: raw }, history).humidity);
}

function correctValue(raw: BucketValue | null, correct: (raw: number) => number | null): BucketValue | null {
  if (raw === null) return null;
  const { count } = raw;
  const [min, mean, max] = [raw.min, raw.sum / count, raw.max].map((value) => correct(value) ?? value);
  return { min: min ?? raw.min, max: max ?? raw.max, sum: (mean ?? 0) * count, count };
}

async function putTogether(
  readings: RawReadings,
  probe: CalibratedProbe,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
): Promise<Values> {
  const spanMs = toMs - fromMs;
  const isOfMinutes = spanMs > MINUTE_MS && spanMs % MINUTE_MS === 0 && fromMs % MINUTE_MS === 0;
  const parts = isOfMinutes
    ? await calibratedBuckets(readings, probe, { fromMs, bucketMs: MINUTE_MS, count: spanMs / MINUTE_MS })
    : await readParts(readings, probe, fromMs, toMs);
  return {
    temperature: sumUp(parts.flatMap(({ temperature }) => temperature ?? [])),
    humidity: sumUp(parts.flatMap(({ humidity }) => humidity ?? [])),
  };
}

async function readParts(
  readings: RawReadings,
  { probe, calibrations }: CalibratedProbe,
  fromMs: number,
  toMs: number,
): Promise<Values[]> {
  const parts: Values[] = [];
  for await (const raw of readings.range(probe, fromMs, toMs - 1)) parts.push(valuesOf(calibrate(raw, calibrations)));
  return parts;
}

function valuesOf({ temperature, humidity, temperatureFlag, humidityFlag }: Reading): Values {
  return { temperature: goodValue(temperature, temperatureFlag), humidity: goodValue(humidity, humidityFlag) };
}

/** Only what is good counts, as in the roll-up. */
function goodValue(value: number | null, flag: Flag): BucketValue | null {
  const isGood = flag === FLAG.pass || flag === FLAG.notEvaluated;
  return value === null || !isGood ? null : { min: value, max: value, sum: value, count: 1 };
}

function sumUp(values: readonly BucketValue[]): BucketValue | null {
  const [first, ...rest] = values;
  if (first === undefined) return null;
  return rest.reduce(
    (all, one) => ({
      min: Math.min(all.min, one.min),
      max: Math.max(all.max, one.max),
      sum: all.sum + one.sum,
      count: all.count + one.count,
    }),
    first,
  );
}
