// One line of the record's table after RFC 4180, safe to open in a spreadsheet: text cannot become a formula, numbers are never touched.
import { stringify } from 'csv-stringify/sync';
import type { TimeTexts } from './time-texts.ts';

export const csvColumns = [
  'section',
  'time_utc',
  'time_local',
  'probe',
  'place',
  'temperature_c',
  'humidity_pct',
  'temperature_flag',
  'humidity_flag',
  'late',
  'what',
  'state',
  'value',
  'person',
  'note',
  // Empty unless a calibration has changed the value.
  'raw_temperature_c',
  'raw_humidity_pct',
] as const;

/** What a row that is not a reading may say; the columns of readings stay empty in it. */
export interface CsvRow {
  readonly section: 'batch' | 'day' | 'excursion' | 'gap' | 'alarm' | 'log' | 'check';
  readonly atMs: number | null;
  readonly probe?: string | null;
  readonly place?: string;
  readonly what: string;
  readonly state?: string;
  readonly value?: number | null;
  readonly person?: string | null;
  readonly note?: string;
}

/** The line of a row, CRLF at its end. */
export function csvLine(row: CsvRow, texts: TimeTexts): string {
  const { section, atMs, probe, place, what, state, value, person, note } = row;
  const times = atMs === null ? [null, null] : [texts.utc(atMs), texts.local(atMs)];
  const words = [what, state ?? null].map(guardText);
  return csvCells([
    section,
    ...times,
    guardText(probe),
    place ?? null,
    null,
    null,
    null,
    null,
    null,
    ...words,
    value ?? null,
    guardText(person),
    guardText(note),
    null,
    null,
  ]);
}

/** A line of cells as they are. */
export function csvCells(cells: readonly (string | number | null | undefined)[]): string {
  return stringify([[...cells]], { record_delimiter: '\r\n', quote_record_delimiter: true });
}

/** One text cell, guarded and quoted as needed, without an end of line. */
export function csvText(text: string): string {
  return csvCells([guardText(text)]).slice(0, -2);
}

/**
 * Text that a spreadsheet would take for a formula gets an apostrophe before it (OWASP, CSV injection): when it starts with = + - @, their full-width
 * forms, or a tab or line break, also after blanks.
 */
export function guardText(text: string | null | undefined): string | null {
  if (text === null || text === undefined) return null;
  return /^(?:\s*[=+\-@＝＋－＠]|[\t\r\n])/.test(text) ? `'${text}` : text;
}
