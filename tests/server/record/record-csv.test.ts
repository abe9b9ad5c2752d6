// The record as a spreadsheet gets it, read back by a parser that is not ours.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { csvColumns } from '../../../server/record/csv-line.ts';
import { type GatheredRecord, gatherRecord } from '../../../server/record/gather-record.ts';
import { recordCsv } from '../../../server/record/record-csv.ts';
import type { Reading } from '../../../shared/readings/reading.ts';
import { MINUTE_MS, utcText } from '../../../shared/units.ts';
import { collect, oneReading, readingsFrom } from './record-text.ts';
import { batch, canopyReadings, GAP, openSampleBatch, PEAK_MS, request, type SampleBatch } from './sample-batch.ts';

type Row = Record<(typeof csvColumns)[number], string>;

let sample: SampleBatch;
let gathered: GatheredRecord;
let text: string;
let rows: Row[];
beforeAll(async () => {
  sample = await openSampleBatch();
  gathered = await gatherRecord(sample.store, batch.id, request);
  text = await collect(recordCsv(sample.store, gathered));
  rows = parse(text, { bom: true, columns: true }) as Row[];
});
afterAll(() => sample.close());

const section = (name: string) => rows.filter((row) => row.section === name);

describe('the file', () => {
  it('starts with a byte order mark and the names of the columns', () => {
    expect(text.startsWith(`\uFEFF${csvColumns.join(',')}\r\n`)).toBe(true);
  });

  it('ends every line with CRLF', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('holds no text cell that a spreadsheet would take for a formula', () => {
    const texts = rows.flatMap(({ probe, place, what, state, person, note }) => [
      probe,
      place,
      what,
      state,
      person,
      note,
    ]);
    expect(texts.filter((cell) => /^\s*[=+\-@]/.test(cell))).toEqual([]);
    expect(section('batch').find(({ what }) => what === 'batch')?.note).toBe("'=B-17");
    expect(section('log').map(({ note }) => note)).toContain('\'=HYPERLINK("x")');
    expect(section('reading').some(({ probe }) => probe === "'@canopy")).toBe(true);
  });

  it('keeps its parts in order, and what is dated in order of time', () => {
    const order = [...new Set(rows.map((row) => row.section))];
    expect(order.slice(0, 4)).toEqual(['batch', 'day', 'excursion', 'gap']);
    const dated = rows.filter((row) => ['reading', 'alarm', 'log', 'check'].includes(row.section));
    expect(rows.slice(-dated.length)).toEqual(dated);
    const times = dated.map((row) => Date.parse(row.time_utc));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });
});

describe('readings', () => {
  it('are all there, each number and flag as it is stored', () => {
    const canopy = section('reading').filter(({ place }) => place === 'canopy');
    const cell = (value: number | null) => (value === null ? '' : String(value));
    expect(
      canopy.map((row) => [
        row.time_utc,
        row.temperature_c,
        row.humidity_pct,
        row.temperature_flag,
        row.humidity_flag,
        row.late,
      ]),
    ).toEqual(
      canopyReadings().map((one) => [
        utcText(one.timeMs),
        cell(one.temperature),
        cell(one.humidity),
        String(one.temperatureFlag),
        String(one.humidityFlag),
        one.late ? 'yes' : 'no',
      ]),
    );
  });

  it('show half past two twice in the night the clocks go back, an hour apart', () => {
    const twice = section('reading').filter(
      (row) => row.place === 'canopy' && row.time_local === '2026-10-25 02:30:00',
    );
    expect(twice.map((row) => row.time_utc)).toEqual(['2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z']);
  });

  it('bring any value with up to four decimals back exactly', async () => {
    const value = fc.integer({ min: -600_000, max: 1_100_000 }).map((tenThousandths) => tenThousandths / 10_000);
    await fc.assert(
      fc.asyncProperty(value, value, async (temperature, humidity) => {
        const reading: Reading = { ...oneReading, temperature, humidity };
        const one = await collect(
          recordCsv(readingsFrom([reading]), { ...gathered, sources: gathered.sources.slice(0, 1) }),
        );
        const row = (parse(one, { bom: true, columns: true }) as Row[]).find((found) => found.section === 'reading');
        expect([Number(row?.temperature_c), Number(row?.humidity_pct)]).toEqual([temperature, humidity]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the other rows', () => {
  it('tell every step of an alarm with value, limit and person', () => {
    expect(section('alarm').map(({ what, state, value, person }) => [what, state, value, person])).toEqual([
      ['heat', 'occurred', '28.4', ''],
      ['heat', 'acknowledged', '28.4', 'Bram'],
      ['heat', 'returned', '28.4', ''],
    ]);
    expect(section('alarm').every(({ note }) => note.includes('limit 28'))).toBe(true);
  });

  it('put what happened at the instant of a reading after the reading', () => {
    const atPeak = rows.filter(({ time_utc, section: name }) => time_utc === utcText(PEAK_MS) && name !== 'day');
    expect(atPeak.map((row) => row.section)).toEqual(['reading', 'reading', 'alarm', 'log']);
  });

  it('give the figures of every day and stage and of the whole, one a row', () => {
    const mean = section('day').filter(({ what }) => what === 'temperature_mean_c');
    expect(mean.map(({ state }) => state)).toEqual([
      ...['day 1', 'day 2', 'day 3', 'stage loading', 'stage closed', 'whole'],
    ]);
    expect(mean.slice(0, 3).map(({ value }) => Number(value))).toEqual(
      gathered.record.days.map((day) => day.temperature.mean),
    );
  });

  it('show the gap with its length', () => {
    expect(section('gap')).toHaveLength(1);
    expect(section('gap')[0]).toMatchObject({
      probe: "'@canopy",
      time_utc: utcText(GAP.fromMs),
      value: '120',
      note: `until ${utcText(GAP.toMs)}`,
    });
  });

  it('show an answered check when it was answered and a missed one when it was due', () => {
    const answered = section('check').find(({ what }) => what === 'film-wet.1');
    expect(answered).toMatchObject({ state: 'yes', person: 'Bram', time_utc: utcText(PEAK_MS + MINUTE_MS) });
    const missed = section('check').find(({ state }) => state === 'missed');
    expect(missed?.note).toContain(`due ${missed?.time_utc}`);
  });
});
