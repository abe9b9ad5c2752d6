// How fast a long series goes through plan, quality tests, rules and forecast, beside a loop that only parses the same file.
import { createReadStream, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readSeries } from '../../server/cli/read-series.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { createSeriesReplay } from '../../shared/replay/replay-series.ts';
import { DAY_MS, MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { type BenchLine, makeLine } from './bench-line.ts';

const READINGS = 691_200;
const STEP_MS = 10 * SECOND_MS;
const CLOSED_MS = Date.UTC(2026, 2, 2, 15, 30);
const ROUNDS = 3;

export async function* measureReplay(): AsyncGenerator<BenchLine> {
  const folder = mkdtempSync(join(tmpdir(), 'takewell-bench-'));
  const file = join(folder, 'series.csv');
  writeFileSync(file, makeSeries());
  const pairs: { floor: number; measured: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1)
    pairs.push({ floor: await timed(() => parseOnly(file)), measured: await timed(() => replayFile(file)) });
  rmSync(folder, { recursive: true });
  yield makeLine(`replay of ${READINGS.toLocaleString('en')} readings in a file`, 's', 'at most 3', pairs);
}

async function timed(work: () => Promise<void>): Promise<number> {
  const startMs = performance.now();
  await work();
  return (performance.now() - startMs) / SECOND_MS;
}

async function parseOnly(file: string): Promise<void> {
  let rest = '';
  let rows = 0;
  for await (const piece of createReadStream(file, { encoding: 'utf8', highWaterMark: 256 * 1024 })) {
    const lines = (rest + piece).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      const [time = '', temperature, humidity] = line.split(',');
      if (Number.isFinite(Date.parse(time) + Number(temperature) + Number(humidity))) rows += 1;
    }
  }
  if (rows !== READINGS) throw new Error(`${rows} rows were parsed: the floor means nothing`);
}

async function replayFile(file: string): Promise<void> {
  const document = standardProfiles[0]?.document;
  if (document === undefined) throw new Error('no profile is shipped');
  const setup = { document, closedMs: CLOSED_MS, zone: 'Europe/Amsterdam', silenceMs: 15 * MINUTE_MS };
  const series = createSeriesReplay(setup);
  const stdin = process.stdin;
  const reader = {
    take: series.add,
    miss: series.miss,
    progress: () => undefined,
  };
  await readSeries(file, { stdin }, reader);
  const { quality } = series.result();
  if (quality.pass !== READINGS) throw new Error(`${quality.pass} readings passed: the figure means nothing`);
}

/** Eighty days, ten seconds apart: warm at noon, damp and slowly drying, and no value that is doubted. */
function makeSeries(): string {
  const rows = Array.from({ length: READINGS }, (_, n) => {
    const days = (n * STEP_MS) / DAY_MS;
    const temperature = 22.5 + 4.5 * Math.max(0, Math.sin(days * 2 * Math.PI)) + (n % 7) / 100;
    const humidity = Math.max(76, 97 - 3 * days) + 1.5 * Math.sin(days * 40) + (n % 5) / 50;
    return `${utcText(CLOSED_MS + n * STEP_MS)},${temperature.toFixed(2)},${humidity.toFixed(2)}`;
  });
  return `time,temperature_c,humidity_pct\n${rows.join('\n')}\n`;
}
