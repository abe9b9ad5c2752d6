// The record of a batch whose probe was calibrated on the way: figures and readings are calibrated, the raw values stand beside them, and the
// record says so.
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { csvColumns } from '../../../server/record/csv-line.ts';
import { type GatheredRecord, gatherRecord } from '../../../server/record/gather-record.ts';
import { recordCsv } from '../../../server/record/record-csv.ts';
import { recordJson } from '../../../server/record/record-json.ts';
import { batchRecordDocumentSchema } from '../../../shared/api/record.ts';
import { DAY_MS, HOUR_MS, utcText } from '../../../shared/units.ts';
import { collect } from './record-text.ts';
import {
  batch,
  CLOSED_MS,
  canopyReadings,
  FINISHED_MS,
  openSampleBatch,
  request,
  type SampleBatch,
} from './sample-batch.ts';

type Row = Record<(typeof csvColumns)[number], string>;

/** On the second healing day. */
const FROM_MS = CLOSED_MS + DAY_MS;

let sample: SampleBatch;
let plain: GatheredRecord;
let gathered: GatheredRecord;
beforeAll(async () => {
  sample = await openSampleBatch();
  plain = await gatherRecord(sample.store, batch.id, request);
  const correction = {
    kind: 'offset',
    fromMs: FROM_MS,
    temperature: { offset: -0.5 },
    humidity: { offset: 1 },
  } as const;
  const entry = { probe: 1, correction, note: '=salts', person: 'Noor', enteredMs: FINISHED_MS - HOUR_MS };
  await sample.store.calibrations.add(entry);
  // Entered when the batch was finished: its record stands.
  const afterwards = { ...correction, fromMs: CLOSED_MS, temperature: { offset: 2 } };
  await sample.store.calibrations.add({ ...entry, correction: afterwards, enteredMs: FINISHED_MS + 1 });
  gathered = await gatherRecord(sample.store, batch.id, request);
});
afterAll(() => sample.close());

describe('the figures', () => {
  it('are calibrated from the date of the entry on', () => {
    const means = ({ record }: GatheredRecord) => record.days.map(({ temperature }) => temperature.mean ?? 0);
    const [before, after] = [means(plain), means(gathered)];
    // The line from the last raw value to the first corrected one lies in the first day.
    expect(after[0]).toBeCloseTo(before[0] ?? 0, 2);
    expect(after[1]).toBeCloseTo((before[1] ?? 0) - 0.5, 2);
    expect(after[2]).toBeCloseTo((before[2] ?? 0) - 0.5, 6);
  });

  it('count the flags as they are: a calibration judges nothing', () => {
    expect(gathered.record.quality).toEqual(plain.record.quality);
  });
});

describe('the record', () => {
  it('names the calibration at its probe, who entered it, and the rule', () => {
    const [canopy, house] = gathered.record.probes;
    expect(canopy?.calibrations).toEqual([
      {
        ...{ id: '1', kind: 'offset', from: utcText(FROM_MS), temperature: { offset: -0.5 }, humidity: { offset: 1 } },
        ...{ note: '=salts', enteredAt: utcText(FINISHED_MS - HOUR_MS), enteredBy: 'Noor' },
      },
    ]);
    expect(house?.calibrations).toEqual([]);
    expect(gathered.record.computation.join(' ')).toContain('corrected from the date of each calibration');
  });
});

describe('as CSV', () => {
  let rows: Row[];
  beforeAll(async () => {
    rows = parse(await collect(recordCsv(sample.store, gathered)), { bom: true, columns: true }) as Row[];
  });
  const canopyRows = () => rows.filter(({ section, place }) => section === 'reading' && place === 'canopy');

  it('shows the corrected values, and the raw ones beside those that were changed', () => {
    const cell = (value: number | null) => (value === null ? '' : String(value));
    const by = (value: number | null, offset: number) => (value === null ? null : Number((value + offset).toFixed(4)));
    expect(
      canopyRows().map((row) => [row.temperature_c, row.humidity_pct, row.raw_temperature_c, row.raw_humidity_pct]),
    ).toEqual(
      canopyReadings().map(({ timeMs, temperature, humidity }) =>
        timeMs < FROM_MS
          ? [cell(temperature), cell(humidity), '', '']
          : [cell(by(temperature, -0.5)), cell(by(humidity, 1)), cell(temperature), cell(humidity)],
      ),
    );
  });

  it('tells the calibration in a row of its own', () => {
    expect(rows.filter(({ what }) => what === 'calibration')).toMatchObject([
      {
        ...{ section: 'batch', time_utc: utcText(FROM_MS), probe: "'@canopy", place: 'canopy', state: 'offset' },
        ...{ person: 'Noor' },
        note: `temperature -0.5 °C; humidity +1 %RH; entered ${utcText(FINISHED_MS - HOUR_MS)}; =salts`,
      },
    ]);
  });
});

describe('as JSON', () => {
  it('keeps raw values beside the corrected ones, in the shape that the interface describes', async () => {
    const document: unknown = JSON.parse(await collect(recordJson(sample.store, gathered)));
    const { readings } = batchRecordDocumentSchema.parse(document);
    const [earlier, later] = [FROM_MS - HOUR_MS, FROM_MS + HOUR_MS].map((ms) =>
      readings.find(({ time, probe }) => time === utcText(ms) && probe === '@canopy'),
    );
    expect(earlier).not.toHaveProperty('rawTemperature');
    expect(later?.rawTemperature).toBeCloseTo((later?.temperature ?? 0) + 0.5, 6);
    expect(later?.rawHumidity).toBeCloseTo((later?.humidity ?? 0) - 1, 6);
  });
});
