// How fast readings come in: one a message through the embedded broker, and the packs of a buffer that is sent again.
import { type BenchLine, makeLine } from './bench-line.ts';
import { timeBareBroker, timeBareInsert } from './ingest-floors.ts';
import { nodes, openBenchSite } from './open-bench-site.ts';
import { followBare, openOutsideBroker } from './outside-broker.ts';
import { publishAll } from './publisher.ts';

const MESSAGES = 40_000;
const PACKS = 1_500;
const PACK = 100;
const ROUNDS = 5;

type Message = readonly [topic: string, payload: string];

export async function* measureIngest(): AsyncGenerator<BenchLine> {
  yield await measureSingles();
  yield* measureOutside();
  for (const seconds of [10, 60]) yield await measurePacks(seconds);
}

/** Readings of now from twenty probes in turn: judged, rolled up, streamed. */
async function measureSingles(): Promise<BenchLine> {
  const pairs: { floor: number; measured: number }[] = [];
  await timeBareBroker({ messages: makeSingles(), window: 100 });
  for (let round = 0; round < ROUNDS; round += 1) {
    const floorMs = await timeBareBroker({ messages: makeSingles(), window: 100 });
    const tookMs = await timeService(makeSingles, 100, MESSAGES);
    pairs.push({ floor: (MESSAGES / floorMs) * 1_000, measured: (MESSAGES / tookMs) * 1_000 });
  }
  const name = 'ingest, embedded broker, QoS 1, window 100, one reading a message';
  return makeLine(name, 'messages/s', 'at least 0.6', pairs);
}

/** The same through a mosquitto, from the first message to the last one stored. */
async function* measureOutside(): AsyncGenerator<BenchLine> {
  const broker = await openOutsideBroker();
  if (broker === null) return void process.stdout.write('left out: ingest, outside mosquitto (it is not installed)\n');
  const { port, url } = broker;
  const rate = (tookMs: number) => (MESSAGES / tookMs) * 1_000;
  const pairs: { floor: number; measured: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const bare = await followBare(url, MESSAGES);
    const floorMs = await timeUntil(publishAll({ port, messages: makeSingles(), window: 100 }), bare.all);
    await bare.end();
    const site = await openBenchSite({ TAKEWELL_MQTT_URL: url });
    await site.untilReady();
    const tookMs = await timeUntil(
      publishAll({ port, messages: makeSingles(), window: 100 }),
      site.untilStored(MESSAGES),
    );
    await site.close();
    pairs.push({ floor: rate(floorMs), measured: rate(tookMs) });
  }
  await broker.close();
  yield makeLine('ingest, outside mosquitto, QoS 1, window 100', 'messages/s', 'at least 0.6', pairs);
}

async function timeUntil(...ends: readonly Promise<unknown>[]): Promise<number> {
  const startMs = performance.now();
  await Promise.all(ends);
  return performance.now() - startMs;
}

async function measurePacks(seconds: number): Promise<BenchLine> {
  const rows = PACKS * PACK;
  const pairs: { floor: number; measured: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const floorMs = timeBareInsert(rows, 1_000);
    const tookMs = await timeService(() => makePacks(seconds), 20, rows);
    pairs.push({ floor: (rows / floorMs) * 1_000, measured: (rows / tookMs) * 1_000 });
  }
  const name = `packs of 100 readings, one in ${seconds} s, a buffer sent again`;
  return makeLine(name, 'readings/s', 'at least 0.25', pairs);
}

async function timeService(make: () => readonly Message[], window: number, readings: number): Promise<number> {
  const site = await openBenchSite();
  const tookMs = await publishAll({ port: site.port, messages: make(), window });
  const stored = await site.stored();
  await site.close();
  if (stored !== readings) throw new Error(`${stored} of ${readings} readings were stored: the figure means nothing`);
  return tookMs;
}

/** Smooth air: no reading is doubted and no alarm goes off. */
function airAt(n: number): { temperature: number; humidity: number } {
  const swing = Math.sin(n / 500);
  return { temperature: Math.round((23 + swing) * 100) / 100, humidity: Math.round((96 + swing) * 100) / 100 };
}

function makeSingles(): Message[] {
  const startMs = Date.now();
  return Array.from({ length: MESSAGES }, (_, n) => {
    const time = new Date(startMs + Math.floor(n / nodes.length)).toISOString();
    return [`takewell/v1/${nodes[n % nodes.length]}/readings`, JSON.stringify({ ...airAt(n), time })];
  });
}

function makePacks(seconds: number): Message[] {
  const startSeconds = Math.floor(Date.now() / 1_000) - PACKS * PACK * seconds;
  return Array.from({ length: PACKS }, (_, pack) => {
    const readings = Array.from({ length: PACK }, (_unused, i) => {
      const n = pack * PACK + i;
      return { ...airAt(n), time: startSeconds + n * seconds };
    });
    return [`takewell/v1/${nodes[0]}/readings`, JSON.stringify(readings)];
  });
}
