// Lines of the record's table: after RFC 4180, and no text in them can become a formula.
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CsvRow, csvCells, csvColumns, csvLine, csvText, guardText } from '../../../server/record/csv-line.ts';
import { makeTimeTexts } from '../../../server/record/time-texts.ts';

const texts = makeTimeTexts('Europe/Amsterdam');

const guarded: [string, string, string][] = [
  ['an equals sign starts a formula', '=1+1', "'=1+1"],
  ['a plus sign does too', '+31 6', "'+31 6"],
  ['a minus sign does too', '-2', "'-2"],
  ['an at sign does too', '@SUM(A1)', "'@SUM(A1)"],
  ['full-width signs are read as the plain ones', '＝1', "'＝1"],
  ['blanks before it do not help', '  =1', "'  =1"],
  ['a tab may be eaten', '\t1', "'\t1"],
  ['a line break may be eaten', '\r1', "'\r1"],
  ['a plain word stays', 'limp', 'limp'],
  ['a sign inside stays', 'a=b', 'a=b'],
  ['a text that starts with a digit stays', '3-4 trays', '3-4 trays'],
  ['an empty text stays', '', ''],
];

describe('guardText', () => {
  it.each(guarded)('%s', (_, text, expected) => {
    expect(guardText(text)).toBe(expected);
  });
});

describe('csvLine', () => {
  const row: CsvRow = {
    section: 'log',
    atMs: Date.UTC(2026, 2, 2, 7),
    what: 'note',
    value: -2.5,
    person: '=Ada',
    note: 'said "stop",\nthen left',
  };

  it('has a cell for every column and ends with CRLF', () => {
    const line = csvLine(row, texts);
    expect(line.endsWith('\r\n')).toBe(true);
    const [cells] = parse(line) as string[][];
    expect(cells).toHaveLength(csvColumns.length);
  });

  it('guards text and leaves a negative number alone', () => {
    const [cells] = parse(csvLine(row, texts), { columns: [...csvColumns] }) as Record<string, string>[];
    expect(cells).toMatchObject({
      time_utc: '2026-03-02T07:00:00Z',
      time_local: '2026-03-02 08:00:00',
      value: '-2.5',
      person: "'=Ada",
      note: 'said "stop",\nthen left',
    });
  });

  it('brings any text back as it was, but for the guard', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'binary' }), (note, person) => {
        const line = csvLine({ section: 'log', atMs: null, what: 'note', note, person }, texts);
        const [cells] = parse(line, { columns: [...csvColumns] }) as Record<string, string>[];
        expect(cells).toMatchObject({ note: guardText(note), person: guardText(person) });
      }),
    );
  });

  it('writes the text of one cell as it stands in a line', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(csvCells([guardText(text), 1])).toBe(`${csvText(text)},1\r\n`);
      }),
    );
  });
});
