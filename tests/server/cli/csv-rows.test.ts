// CSV text taken apart, however it is cut into pieces.

import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CsvRows } from '../../../server/cli/csv-rows.ts';

/** Reads text in pieces of so many characters. */
function read(text: string, size = text.length): string[][] {
  const found: string[][] = [];
  const rows = new CsvRows((row) => found.push(row));
  for (let at = 0; at < text.length; at += size) rows.push(text.slice(at, at + size));
  rows.end();
  return found;
}

const cases: [string, string, string[][]][] = [
  [
    'plain rows',
    'a,b\n1,2\n',
    [
      ['a', 'b'],
      ['1', '2'],
    ],
  ],
  [
    'a last row without an end',
    'a,b\n1,2',
    [
      ['a', 'b'],
      ['1', '2'],
    ],
  ],
  [
    'the line ends of Windows',
    'a,b\r\n1,2\r\n',
    [
      ['a', 'b'],
      ['1', '2'],
    ],
  ],
  [
    'a byte order mark',
    '\uFEFFa,b\n1,2\n',
    [
      ['a', 'b'],
      ['1', '2'],
    ],
  ],
  ['empty lines, passed over', 'a\n\n\r\n1\n', [['a'], ['1']]],
  [
    'empty fields',
    'a,,c\n,,\n',
    [
      ['a', '', 'c'],
      ['', '', ''],
    ],
  ],
  ['quotes', '"a","b c"\n', [['a', 'b c']]],
  ['a comma in quotes', '"1,5",2\n', [['1,5', '2']]],
  ['a doubled quote', '"say ""hi""",2\n', [['say "hi"', '2']]],
  ['an empty quoted field', '"",x\n', [['', 'x']]],
  [
    'a line break in quotes',
    '"one\ntwo",3\n4,5\n',
    [
      ['one\ntwo', '3'],
      ['4', '5'],
    ],
  ],
  ['a quote that is never closed: the rest is one row', '"a,b\nc', [['a,b\nc']]],
];

describe('CsvRows', () => {
  it.each(cases)('%s', (why, text, rows) => {
    for (const size of [1, 2, 3, 7, text.length]) {
      const found = read(text, size);
      // How a quote without an end is split is nobody's promise, only that nothing is lost after it.
      if (why.startsWith('a quote that is never closed')) expect(found).toHaveLength(1);
      else expect(found).toEqual(rows);
    }
  });

  it('reads back whatever was written by the rules', () => {
    const field = fc.string({ unit: fc.constantFrom('a', ',', '"', '\n', ' ', '5', 'é') });
    fc.assert(
      fc.property(
        fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { minLength: 1 }),
        fc.integer({ min: 1, max: 20 }),
        (rows, size) => {
          expect(read(stringify(rows), size)).toEqual(rows);
        },
      ),
    );
  });
});
