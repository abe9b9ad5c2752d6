// Takes CSV text apart as it comes in, piece by piece (RFC 4180: commas, quotes, doubled quotes, line breaks inside quotes). Lines without a quote,
// which is nearly all of a table of readings, take a quick way. It knows no columns.

export class CsvRows {
  readonly #take: (row: string[]) => void;
  #rest = '';
  #isFirst = true;

  /** `take` is given each row once it is complete; empty lines are passed over. */
  constructor(take: (row: string[]) => void) {
    this.#take = take;
  }

  push(text: string): void {
    const lines = (this.#rest + text).split('\n');
    this.#rest = lines.pop() ?? '';
    this.#takeRows(lines, false);
  }

  /** No text follows: what is left is the last row. */
  end(): void {
    const last = this.#rest;
    this.#rest = '';
    this.#takeRows([last], true);
  }

  #takeRows(lines: readonly string[], isEnd: boolean): void {
    let open = '';
    for (const line of lines) {
      const whole = open === '' ? line : `${open}\n${line}`;
      if (isInsideQuotes(whole) && !isEnd) {
        open = whole;
        continue;
      }
      open = '';
      const row = whole.endsWith('\r') ? whole.slice(0, -1) : whole;
      if (row !== '') this.#take(splitRow(this.#withoutMark(row)));
    }
    if (open !== '') this.#rest = `${open}\n${this.#rest}`;
  }

  /** Spreadsheets put a byte order mark before the first row. */
  #withoutMark(row: string): string {
    if (!this.#isFirst) return row;
    this.#isFirst = false;
    return row.replace(/^\uFEFF/, '');
  }
}

function isInsideQuotes(text: string): boolean {
  if (!text.includes('"')) return false;
  return text.split('"').length % 2 === 0;
}

function splitRow(row: string): string[] {
  if (!row.includes('"')) return row.split(',');
  // A comma before the first field too: then every field begins with one, and an empty one is found like any other.
  const fields = `,${row}`.matchAll(/,(?:"((?:[^"]|"")*)"|([^,]*))/g);
  return [...fields].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '');
}
