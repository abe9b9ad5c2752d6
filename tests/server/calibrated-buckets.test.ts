// Calibrated buckets and means: whatever the readings, the entries and the grid, they are what correcting each reading gives. A real store.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibratedBuckets, calibratedMean } from '../../server/calibrated-buckets.ts';
import type { BucketValue, Store } from '../../server/store/store.ts';
import { type Calibration, calibrate } from '../../shared/readings/calibration.ts';
import type { Flag, Reading } from '../../shared/readings/reading.ts';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import { openTestStore, readRange, type StoredReading, storedReading } from '../support/open-test-store.ts';

const START = Date.UTC(2026, 2, 1);
const SPAN_MS = 30 * MINUTE_MS;

const timeMs = fc.integer({ min: 0, max: SPAN_MS / SECOND_MS - 1 }).map((second) => START + second * SECOND_MS);
const hundredths = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
const flag = fc.constantFrom<Flag>(1, 1, 1, 2, 3, 4);

const reading: fc.Arbitrary<StoredReading> = fc
  .record({
    timeMs,
    temperature: fc.option(hundredths(15, 32)),
    // Mostly where a correction meets 100.
    humidity: fc.option(fc.oneof(hundredths(94, 100), hundredths(60, 100))),
    temperatureFlag: flag,
    humidityFlag: flag,
  })
  .map((given) =>
    storedReading({
      ...given,
      temperatureFlag: given.temperature === null ? 9 : given.temperatureFlag,
      humidityFlag: given.humidity === null ? 9 : given.humidityFlag,
    }),
  );

const offset = fc.option(hundredths(-3, 3), { nil: undefined }).map((by) => (by === undefined ? by : { offset: by }));
const calibration: fc.Arbitrary<Calibration> = fc.oneof(
  fc.record({ kind: fc.constant('offset' as const), fromMs: timeMs, temperature: offset, humidity: offset }),
  fc.record({ fromMs: timeMs, low: hundredths(73, 77), high: hundredths(95, 99) }).map(({ fromMs, low, high }) => ({
    ...{ kind: 'two-point' as const, fromMs },
    humidity: [
      { reference: 75.3, measured: low },
      { reference: 97.3, measured: high },
    ] as const,
  })),
);
const history = fc
  .array(calibration, { maxLength: 3 })
  .map((entries) => entries.toSorted((one, other) => one.fromMs - other.fromMs));

const grid = fc.oneof(
  fc.constantFrom(MINUTE_MS, 2 * MINUTE_MS, 7 * MINUTE_MS, SPAN_MS).map((bucketMs) => ({ fromMs: START, bucketMs })),
  fc.constantFrom(1, 13, 59).map((seconds) => ({ fromMs: START + 5 * SECOND_MS, bucketMs: seconds * SECOND_MS })),
);

function expectValue(found: BucketValue | null | undefined, values: readonly number[]): void {
  expect(found?.count ?? 0).toBe(values.length);
  if (values.length === 0) return;
  expect(found?.min).toBeCloseTo(Math.min(...values), 3);
  expect(found?.max).toBeCloseTo(Math.max(...values), 3);
  expect((found?.sum ?? 0) / values.length).toBeCloseTo(mean(values) ?? 0, 3);
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, one) => sum + one, 0) / values.length;
}

const good = (list: readonly Reading[], quantity: 'temperature' | 'humidity') =>
  list.flatMap((one) => (one[`${quantity}Flag`] <= 2 ? (one[quantity] ?? []) : []));

async function fill(readings: readonly StoredReading[]): Promise<Store> {
  const { store } = await openTestStore();
  await store.commit({ readings });
  return store;
}

describe('calibrated buckets', () => {
  it('are what correcting every reading gives, over changes of calibration and at saturation too', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(reading, { maxLength: 60 }), history, grid, async (readings, calibrations, steps) => {
        const store = await fill(readings);
        const query = { ...steps, count: Math.ceil(SPAN_MS / steps.bucketMs) };
        const buckets = await calibratedBuckets(store.readings, { probe: 1, calibrations }, query);
        const corrected = (await readRange(store)).map((one) => calibrate(one, calibrations));
        for (let index = 0; index < query.count; index += 1) {
          const fromMs = query.fromMs + index * query.bucketMs;
          const inside = corrected.filter((one) => one.timeMs >= fromMs && one.timeMs < fromMs + query.bucketMs);
          const bucket = buckets.find((one) => one.index === index);
          expect(bucket?.readings ?? 0).toBe(inside.length);
          expectValue(bucket?.temperature, good(inside, 'temperature'));
          expectValue(bucket?.humidity, good(inside, 'humidity'));
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('a calibrated mean', () => {
  it('is that of the corrected readings of whole minutes', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(reading, { maxLength: 40 }), history, async (readings, calibrations) => {
        const store = await fill(readings);
        const probe = { probe: 1, calibrations };
        const found = await calibratedMean(store.readings, probe, START + 90 * SECOND_MS, START + 20 * MINUTE_MS + 1);
        const inside = (await readRange(store))
          .map((one) => calibrate(one, calibrations))
          .filter((one) => one.timeMs >= START + MINUTE_MS && one.timeMs < START + 20 * MINUTE_MS);
        for (const quantity of ['temperature', 'humidity'] as const) {
          const expected = mean(good(inside, quantity));
          if (expected === null) expect(found[quantity]).toBeNull();
          else expect(found[quantity]).toBeCloseTo(expected, 3);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('of less than a minute is not known', async () => {
    const store = await fill([storedReading({ timeMs: START })]);
    const calibrations: Calibration[] = [{ kind: 'offset', fromMs: 0, temperature: { offset: 1 } }];
    const nothing = { temperature: null, humidity: null };
    const probe = { probe: 1, calibrations };
    expect(await calibratedMean(store.readings, probe, START, START + 59 * SECOND_MS)).toEqual(nothing);
    expect(await calibratedMean(store.readings, probe, START, START + MINUTE_MS)).toEqual({
      temperature: 22,
      humidity: 95,
    });
  });
});
