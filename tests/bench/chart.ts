// The chart of ten days over HTTP beside one statement over the roll-up; and how chart, start-up and ingest grow from a small store to a large one,
// measured in turns, so that whatever else the machine does meets both alike.
import pino from 'pino';
import { openApp } from '../../server/app.ts';
import { systemClock } from '../../server/clock.ts';
import { readSettings } from '../../server/settings.ts';
import { openDatabaseToRead } from '../../server/store/open-database.ts';
import { openStore } from '../../server/store/open-store.ts';
import { FLAG } from '../../shared/readings/reading.ts';
import { MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { type ApiClient, createApiClient } from '../support/api-client.ts';
import { type BenchLine, makeLine } from './bench-line.ts';
import {
  CHAMBER,
  END_MS,
  makeStoredSite,
  PROBES,
  START_MS,
  STEP_MS,
  type StoredSite,
  TENT_READINGS,
} from './stored-site.ts';

/** `npm run bench -- 100000000` measures growth up to as many; making them takes minutes. */
const LARGE = Number(process.argv[2] ?? 6_000_000);
const POINTS = 1_000;
const ROUNDS = 15;
const STARTS = 5;
const PACKS = 300;
const PACK = 100;
const CODE = 'set-up-code-of-the-bench';

export async function* measureChart(): AsyncGenerator<BenchLine> {
  const small = await makeStoredSite(TENT_READINGS);
  const large = await makeStoredSite(LARGE);
  yield* measureCharts(small, large);
  const growth = `from ${inMillions(TENT_READINGS)} to ${inMillions(LARGE)} readings`;
  yield makeLine(`growth of start-up, ${growth}`, 'ms', 'at most 1.2', await inTurns(STARTS, small, large, start));
  const packs = `growth of ingest in packs of ${PACK}, ${growth}`;
  yield makeLine(packs, 'ms', 'at most 1.2', await inTurns(STARTS, small, large, storeMore));
  small.remove();
  large.remove();
}

function inMillions(readings: number): string {
  return `${(readings / 1e6).toFixed(1)} million`;
}

/** Pairs of the same work in the small store and in the large; the first of each is for warming up. */
async function inTurns(
  rounds: number,
  small: StoredSite,
  large: StoredSite,
  work: (site: StoredSite, round: number) => Promise<number>,
) {
  const pairs: { floor: number; measured: number }[] = [];
  for (let round = 0; round <= rounds; round += 1) {
    const pair = { floor: await work(small, round), measured: await work(large, round) };
    if (round > 0) pairs.push(pair);
  }
  return pairs;
}

async function* measureCharts(small: StoredSite, large: StoredSite): AsyncGenerator<BenchLine> {
  const readers = new Map([
    [small, await openReader(small)],
    [large, await openReader(large)],
  ]);
  const chart = async (site: StoredSite) => (await readers.get(site)?.chart()) ?? Number.NaN;
  const beside: { floor: number; measured: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1)
    beside.push({ floor: askRollUp(large), measured: await chart(large) });
  const name = `chart of 10 days, ${PROBES} probes, ${POINTS} buckets, over HTTP, among ${inMillions(LARGE)} readings`;
  yield makeLine(name, 'ms', 'at most 1.5', beside);
  const growth = `growth of the chart, from ${inMillions(TENT_READINGS)} to ${inMillions(LARGE)} readings`;
  yield makeLine(growth, 'ms', 'at most 1.2', await inTurns(ROUNDS, small, large, chart));
  for (const reader of readers.values()) await reader.close();
}

interface Reader {
  /** Milliseconds of one chart. */
  chart(): Promise<number>;
  close(): Promise<void>;
}

async function openReader(site: StoredSite): Promise<Reader> {
  const app = await openSite(site);
  const api = createApiClient(app.url);
  await api.post('/setup', { code: CODE, name: 'Bench', password: 'a password for the bench' });
  return { chart: () => timeChart(api), close: () => app.close() };
}

async function timeChart(api: ApiClient): Promise<number> {
  const path = `/chambers/${CHAMBER}/climate?from=${utcText(START_MS)}&to=${utcText(END_MS)}&points=${POINTS}`;
  const begunMs = performance.now();
  const { status } = await api.get(path);
  if (status !== 200) throw new Error(`the chart was answered ${status}: the figure means nothing`);
  return performance.now() - begunMs;
}

function askRollUp({ file }: StoredSite): number {
  const db = openDatabaseToRead(file);
  const probes = Array.from({ length: PROBES }, (_, i) => i + 1).join(',');
  const bucket = (END_MS - START_MS) / POINTS / MINUTE_MS;
  const of = (name: string) => `sum(${name}_sum), sum(${name}_count), min(${name}_min), max(${name}_max)`;
  const begunMs = performance.now();
  const rows = db
    .prepare(
      `SELECT probe, CAST((minute - ?) / ? AS INTEGER) bucket, ${of('temperature')}, ${of('humidity')} FROM minutes
       WHERE probe IN (${probes}) AND minute >= ? AND minute < ? GROUP BY 1, 2`,
    )
    .all(START_MS / MINUTE_MS, bucket, START_MS / MINUTE_MS, END_MS / MINUTE_MS);
  const tookMs = performance.now() - begunMs;
  db.close();
  if (rows.length < PROBES * POINTS) throw new Error(`${rows.length} buckets were found: the floor means nothing`);
  return tookMs;
}

async function start(site: StoredSite): Promise<number> {
  const begunMs = performance.now();
  const app = await openSite(site);
  const tookMs = performance.now() - begunMs;
  await app.close();
  return tookMs;
}

/** Milliseconds in which packs of readings are stored and rolled up, each pack durable. */
async function storeMore({ file }: StoredSite, round: number): Promise<number> {
  const store = openStore({ file, nowMs: END_MS });
  const begunMs = performance.now();
  for (let pack = 0; pack < PACKS; pack += 1) {
    const fromMs = END_MS + (round * PACKS + pack) * PACK * STEP_MS;
    const readings = Array.from({ length: PACK }, (_, n) => {
      const timeMs = fromMs + n * STEP_MS;
      return { probe: 1, timeMs, temperature: 23, humidity: 95, receivedMs: timeMs, ...good };
    });
    await store.commit({ readings });
  }
  const tookMs = performance.now() - begunMs;
  await store.close();
  return tookMs;
}

const good = { temperatureFlag: FLAG.pass, humidityFlag: FLAG.pass, late: false };

async function openSite({ folder }: StoredSite) {
  const free = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0', TAKEWELL_SETUP_CODE: CODE };
  const settings = readSettings({ ...free, TAKEWELL_DATA_DIR: folder });
  return openApp({ settings, clock: systemClock, log: pino({ level: 'silent' }), roundMs: 60 * SECOND_MS });
}
