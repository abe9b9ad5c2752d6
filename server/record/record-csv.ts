// The record as one table for a spreadsheet, streamed: facts, days, excursions and gaps first, then everything dated in order of time.
import type { Reading } from '../../shared/readings/reading.ts';
import type { Store } from '../store/store.ts';
import { changedByCalibration } from './calibration-rule.ts';
import { eventRows } from './csv-events.ts';
import { factRows } from './csv-facts.ts';
import { csvCells, csvColumns, csvLine, csvText } from './csv-line.ts';
import type { GatheredRecord } from './gather-record.ts';
import { mergeReadings } from './merge-readings.ts';
import type { ProbeSource } from './record-sources.ts';
import { makeTimeTexts, type TimeTexts } from './time-texts.ts';

/** Tells a spreadsheet that the file is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The table after RFC 4180 with CRLF, in pieces of a few hundred lines. Memory does not grow with the number of readings. */
export async function* recordCsv(
  store: Pick<Store, 'readings'>,
  { record, sources }: GatheredRecord,
): AsyncGenerator<string> {
  const texts = makeTimeTexts(record.site.zone);
  const facts = factRows(record).map((row) => csvLine(row, texts));
  yield BYTE_ORDER_MARK + csvCells(csvColumns) + facts.join('');
  const events = eventRows(record);
  const probeCells = new Map(sources.map((source) => [source, probeCell(source)]));
  let next = 0;
  for await (const block of mergeReadings(store, sources)) {
    let text = '';
    for (const { source, reading, raw } of block) {
      // What happened at the instant of a reading comes after it: it was seen because of it.
      for (let event = events[next]; event !== undefined && event.atMs < reading.timeMs; event = events[++next]) {
        text += csvLine(event, texts);
      }
      text += readingLine(reading, raw, probeCells.get(source) ?? ',', texts);
    }
    yield text;
  }
  const rest = events.slice(next).map((row) => csvLine(row, texts));
  if (rest.length > 0) yield rest.join('');
}

function probeCell({ label, place }: ProbeSource): string {
  return `${csvText(label)},${place}`;
}

// Put together by hand, since there may be a million of them: apart from the probe's name, written once, nothing in it ever needs a quote.
function readingLine(reading: Reading, raw: Reading, probe: string, texts: TimeTexts): string {
  const { timeMs, temperature, humidity, temperatureFlag, humidityFlag, late } = reading;
  const values = `${temperature ?? ''},${humidity ?? ''},${temperatureFlag},${humidityFlag},${late ? 'yes' : 'no'}`;
  return `reading,${texts.utc(timeMs)},${texts.local(timeMs)},${probe},${values},,,,,,${rawCells(reading, raw)}\r\n`;
}

function rawCells(reading: Reading, raw: Reading): string {
  if (raw === reading) return ',';
  const { temperature, humidity } = changedByCalibration(reading, raw);
  return `${temperature ?? ''},${humidity ?? ''}`;
}
