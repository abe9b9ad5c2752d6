// A file of readings as a series: `time,temperature_c,humidity_pct` by their headings, in any order, more columns ignored. Read in one pass.
import { createReadStream, type ReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import type { ClimateSample } from '../../shared/exposure/day-figures.ts';
import { Problem } from '../../shared/problem.ts';
import { utcText } from '../../shared/units.ts';
import type { Terminal } from './command.ts';
import { CsvRows } from './csv-rows.ts';
import { misuse } from './parse-options.ts';
import { codeOf } from './read-input.ts';
import { createTimeReader } from './read-times.ts';

export interface SeriesReader {
  /** Takes a row in order of time; a half that is empty is null. */
  take(sample: ClimateSample): void;
  /** Takes a row of which nothing can be used. */
  miss(): void;
  /** Told as the reading goes on. */
  progress(bytes: number): void;
}

/** What could not be used, in whole or in part. */
export interface SeriesFaults {
  readonly rows: number;
  /** Rows of which something could be used. */
  readonly taken: number;
  readonly faulty: number;
  /** Line and reason of the first; null when there is none. */
  readonly first: string | null;
}

const columns = ['time', 'temperature_c', 'humidity_pct'] as const;
const PIECE_BYTES = 256 * 1024;

/** Reads a file; `-` is standard input. Problem `bad-input` when it cannot be read or a column is missing. */
export async function readSeries(
  path: string,
  { stdin }: Pick<Terminal, 'stdin'>,
  reader: SeriesReader,
): Promise<SeriesFaults> {
  const stream = path === '-' ? stdin : createReadStream(path, { highWaterMark: PIECE_BYTES });
  const series = new Series(reader);
  const decoder = new TextDecoder();
  const rows = new CsvRows((row) => series.row(row));
  let bytes = 0;
  for await (const piece of pieces(stream, path)) {
    bytes += piece.length;
    rows.push(decoder.decode(piece, { stream: true }));
    reader.progress(bytes);
  }
  rows.push(decoder.decode());
  rows.end();
  return series.end();
}

async function* pieces(stream: Readable | ReadStream, path: string): AsyncGenerator<Uint8Array> {
  try {
    for await (const piece of stream) yield piece instanceof Uint8Array ? piece : Buffer.from(String(piece));
  } catch (cause) {
    throw Problem.forOperator('bad-input', `The file ${path} cannot be read (${codeOf(cause)}).`, { cause });
  }
}

class Series {
  readonly #reader: SeriesReader;
  readonly #readTime = createTimeReader();
  #places: Places | null = null;
  #rows = 0;
  #taken = 0;
  #faulty = 0;
  #first: string | null = null;
  #lastMs = Number.NEGATIVE_INFINITY;

  constructor(reader: SeriesReader) {
    this.#reader = reader;
  }

  row(fields: readonly string[]): void {
    if (this.#places === null) {
      this.#places = findColumns(fields);
      return;
    }
    this.#rows += 1;
    const [atTime, atTemperature, atHumidity] = this.#places;
    const time = (fields[atTime] ?? '').trim();
    const temperature = (fields[atTemperature] ?? '').trim();
    const humidity = (fields[atHumidity] ?? '').trim();
    const timeMs = this.#readTime(time);
    const sample = { temperature: readValue(temperature), humidity: readValue(humidity) };
    const fault =
      this.#timeFault(time, timeMs) ??
      valueFault('temperature_c', temperature, sample.temperature) ??
      valueFault('humidity_pct', humidity, sample.humidity);
    if (fault !== null) this.#note(fault);
    const isOld = timeMs === null || timeMs <= this.#lastMs;
    if (!isOld) this.#lastMs = timeMs;
    if (isOld || (sample.temperature === null && sample.humidity === null)) this.#reader.miss();
    else this.#take({ timeMs, ...sample });
  }

  end(): SeriesFaults {
    if (this.#places === null)
      throw misuse(`The file is empty: it must begin with a row of headings, ${columns.join(',')}.`);
    return { rows: this.#rows, taken: this.#taken, faulty: this.#faulty, first: this.#first };
  }

  #take(sample: ClimateSample): void {
    this.#taken += 1;
    this.#reader.take(sample);
  }

  #timeFault(text: string, timeMs: number | null): string | null {
    if (timeMs === null) return `time must be written with its zone, like 2026-03-02T07:00:00Z; it says "${text}"`;
    return timeMs > this.#lastMs
      ? null
      : `its time ${text} is not later than ${utcText(this.#lastMs)} in a row before it`;
  }

  #note(fault: string): void {
    this.#faulty += 1;
    this.#first ??= `row ${this.#rows}: ${fault}`;
  }
}

/** Where the three columns stand in a row. */
type Places = readonly [number, number, number];

function findColumns(headings: readonly string[]): Places {
  const names = headings.map((heading) => heading.trim().toLowerCase());
  const missing = columns.filter((column) => !names.includes(column));
  if (missing.length > 0)
    throw misuse(`The file has no column ${missing.join(' and no column ')}; its headings are ${headings.join(', ')}.`);
  return [names.indexOf(columns[0]), names.indexOf(columns[1]), names.indexOf(columns[2])];
}

function readValue(text: string): number | null {
  const value = text === '' ? Number.NaN : Number(text);
  return Number.isFinite(value) ? value : null;
}

function valueFault(column: string, text: string, value: number | null): string | null {
  if (value !== null) return null;
  return text === '' ? `${column} is empty` : `${column} must be a number; it says "${text}"`;
}
