// Measured greenhouse air for journeys: the open data when they lie beside the repository, else a made-up series of the same shape, so that
// the tests test either way. The open data are not part of the project.
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { createNoise } from '../../server/demo/seeded-noise.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';

/** One row: two sensors of the same greenhouse; null = left blank. */
export interface GreenhouseRow {
  readonly time: string;
  readonly timeMs: number;
  readonly sensors: readonly [SensorValues, SensorValues];
}

export interface SensorValues {
  readonly temperature: number | null;
  readonly humidity: number | null;
}

export interface GreenhouseSeries {
  readonly rows: readonly GreenhouseRow[];
  readonly isMeasured: boolean;
}

const file = resolve(import.meta.dirname, '../../../shared/data/greenhouse-a.csv');

/** The series in time order; says on the console which one it is when it is not the measured one. */
export function loadGreenhouseSeries(): GreenhouseSeries {
  if (existsSync(file)) return { rows: readRows(readFileSync(file, 'utf8')), isMeasured: true };
  process.stdout.write(`The open greenhouse data are not at ${file}: this test runs on a made-up series.\n`);
  return { rows: [...makeRows()], isMeasured: false };
}

/** The values of one sensor as a node sends them: an object a row, blanks as null. */
export function payloadOf(rows: readonly GreenhouseRow[], sensor: 0 | 1): object[] {
  return rows.map(({ time, sensors }) => ({ time, ...sensors[sensor] }));
}

function readRows(text: string): GreenhouseRow[] {
  const [, ...lines] = text.trim().split('\n');
  return lines.map((line) => {
    const [time = '', ...cells] = line.split(',');
    const [t1 = null, h1 = null, t2 = null, h2 = null] = cells.map((cell) => (cell === '' ? null : Number(cell)));
    const sensors = [
      { temperature: t1, humidity: h1 },
      { temperature: t2, humidity: h2 },
    ] as const;
    return { time, timeMs: Date.parse(time), sensors };
  });
}

/** Stretches without a value, by sensor: from which day of the series, and for how long. */
const blanks = [
  [
    { day: 30.4, lengthMs: 90 * MINUTE_MS },
    { day: 30.6, lengthMs: 35 * MINUTE_MS },
  ],
  [
    { day: 2.4, lengthMs: 150 * MINUTE_MS },
    { day: 12, lengthMs: 4 * DAY_MS },
  ],
] as const;

/** Six weeks, 4 to 6 min apart, with days and nights, and blanks. */
function* makeRows(): Generator<GreenhouseRow> {
  const chance = createNoise(20_220_201).uniform;
  const startMs = Date.UTC(2022, 0, 31, 23);
  for (let timeMs = startMs; timeMs < startMs + 43 * DAY_MS; timeMs += Math.round(4 + 2 * chance()) * MINUTE_MS) {
    const sense = (sensor: 0 | 1) => {
      const air = makeAir(timeMs, chance);
      const sinceMs = (day: number) => timeMs - startMs - day * DAY_MS;
      const isBlank = blanks[sensor].some(({ day, lengthMs }) => sinceMs(day) >= 0 && sinceMs(day) < lengthMs);
      return isBlank ? { temperature: null, humidity: null } : air;
    };
    yield { time: utcText(timeMs), timeMs, sensors: [sense(0), sense(1)] };
  }
}

function makeAir(timeMs: number, chance: () => number): SensorValues {
  const sun = Math.max(0, Math.sin(((timeMs % DAY_MS) / HOUR_MS - 6) * (Math.PI / 12)));
  const round = (value: number) => Math.round(value * 100) / 100;
  return { temperature: round(13 + 9 * sun + 0.4 * chance()), humidity: round(88 - 30 * sun + 2 * chance()) };
}
