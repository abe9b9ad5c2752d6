// Readings of several probes as one series: all of them, once each, in order of time.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeReadings } from '../../../server/record/merge-readings.ts';
import type { Store } from '../../../server/store/store.ts';
import type { Reading } from '../../../shared/readings/reading.ts';
import { oneReading, readingsFrom } from './record-text.ts';

type Series = readonly (readonly number[])[];

async function mergeTimes(series: Series): Promise<[number, number][]> {
  const stores = series.map((times) => readingsFrom(times.map((timeMs): Reading => ({ ...oneReading, timeMs }))));
  const range: Store['readings']['range'] = (probe, from, to) =>
    stores[probe]?.readings.range(probe, from, to) ?? none();
  const store = { readings: { ...readingsFrom([]).readings, range } };
  const sources = series.map((_, probe) => ({ probe, fromMs: 0, toMs: Number.MAX_SAFE_INTEGER, calibrations: [] }));
  const merged: [number, number][] = [];
  for await (const block of mergeReadings(store, sources)) {
    for (const { source, reading } of block) merged.push([reading.timeMs, source.probe]);
  }
  return merged;
}

async function* none(): AsyncGenerator<Reading> {
  yield* [];
}

function sorted(series: Series): [number, number][] {
  const all = series.flatMap((times, probe) => times.map((time): [number, number] => [time, probe]));
  return all.sort(([a, p], [b, q]) => a - b || p - q);
}

describe('mergeReadings', () => {
  it('gives nothing for no source, and for sources without a reading', async () => {
    expect(await mergeTimes([])).toEqual([]);
    expect(await mergeTimes([[], []])).toEqual([]);
  });

  it('gives readings of the same instant in the order of the sources', async () => {
    expect(await mergeTimes([[1, 2], [1], [0, 2]])).toEqual([
      [0, 2],
      [1, 0],
      [1, 1],
      [2, 0],
      [2, 2],
    ]);
  });

  it('loses none of a series longer than what it reads ahead', async () => {
    const long = Array.from({ length: 3000 }, (_, i) => i);
    const series = [long, long.filter((i) => i % 7 === 0), long.filter((i) => i > 2500)];
    expect(await mergeTimes(series)).toEqual(sorted(series));
  });

  it('sorts any series of any probes', async () => {
    const times = fc.uniqueArray(fc.nat(500), { maxLength: 60 }).map((found) => found.sort((a, b) => a - b));
    await fc.assert(
      fc.asyncProperty(fc.array(times, { maxLength: 5 }), async (series) => {
        expect(await mergeTimes(series)).toEqual(sorted(series));
      }),
    );
  });
});
