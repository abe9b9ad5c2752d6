// The record as one JSON document, and that both forms are streamed: they ask for readings only as fast as they hand them on.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type GatheredRecord, gatherRecord } from '../../../server/record/gather-record.ts';
import { recordCsv } from '../../../server/record/record-csv.ts';
import { recordJson } from '../../../server/record/record-json.ts';
import { batchRecordDocumentSchema } from '../../../shared/api/record.ts';
import type { Reading } from '../../../shared/readings/reading.ts';
import { collect, oneReading, readingsFrom } from './record-text.ts';
import { batch, canopyReadings, openSampleBatch, PEAK_MS, request, type SampleBatch } from './sample-batch.ts';

let sample: SampleBatch;
let gathered: GatheredRecord;
beforeAll(async () => {
  sample = await openSampleBatch();
  gathered = await gatherRecord(sample.store, batch.id, request);
});
afterAll(() => sample.close());

describe('recordJson', () => {
  it('is the record with its readings, in the shape that the interface describes', async () => {
    const document: unknown = JSON.parse(await collect(recordJson(sample.store, gathered)));
    const { readings, ...record } = batchRecordDocumentSchema.parse(document);
    expect(record).toEqual(gathered.record);
    const canopy = readings.filter(({ probe }) => probe === '@canopy');
    expect(canopy.map(({ temperature, humidity, late }) => [temperature, humidity, late])).toEqual(
      canopyReadings().map(({ temperature, humidity, late }) => [temperature, humidity, late]),
    );
    const times = readings.map(({ time }) => Date.parse(time));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });

  it('is whole without a single reading', async () => {
    const document = JSON.parse(await collect(recordJson(readingsFrom([]), gathered))) as { readings: unknown[] };
    expect(document.readings).toEqual([]);
  });
});

describe.each([
  ['csv', recordCsv],
  ['json', recordJson],
])('%s', (_, write) => {
  it('holds back no more readings than fit into one piece', async () => {
    let asked = 0;
    function* endless(): Generator<Reading> {
      for (;;) yield { ...oneReading, timeMs: PEAK_MS + asked++ * 1000 };
    }
    const pieces = write(readingsFrom(endless()), { ...gathered, sources: gathered.sources.slice(0, 1) });
    for (let i = 1; i <= 5; i++) {
      const piece = await pieces.next();
      expect(piece.value?.length).toBeLessThan(200_000);
      expect(asked).toBeLessThan(i * 2000);
    }
    await pieces.return(undefined);
  });
});
