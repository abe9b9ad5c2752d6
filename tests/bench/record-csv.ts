// The record of a long batch as a table: eight probes, ten days, beside a loop that selects the same rows and writes them.
import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { gatherRecord } from '../../server/record/gather-record.ts';
import { recordCsv } from '../../server/record/record-csv.ts';
import { openDatabaseToRead } from '../../server/store/open-database.ts';
import { openStore } from '../../server/store/open-store.ts';
import { SECOND_MS } from '../../shared/units.ts';
import { type BenchLine, makeLine } from './bench-line.ts';
import { BATCH, END_MS, makeStoredSite, PROBES, type StoredSite, TENT_READINGS } from './stored-site.ts';

const ROUNDS = 3;
/** Two 4-byte values and an 8-byte key. */
const LEAST_BYTES = 16;

export async function* measureRecord(): AsyncGenerator<BenchLine> {
  const site = await makeStoredSite();
  const bytes = site.bytes() / site.readings;
  yield makeLine('stored for a reading every 10 s, its part of the roll-up included', 'bytes', 'at most 40 bytes', [
    { floor: LEAST_BYTES, measured: bytes },
  ]);
  const pairs: { floor: number; measured: number }[] = [];
  let grownMb = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const floor = await timed(() => selectAndWrite(site));
    const before = process.memoryUsage().rss;
    const measured = await timed(() => writeRecord(site));
    grownMb = (process.memoryUsage().rss - before) / 1e6;
    pairs.push({ floor, measured });
  }
  site.remove();
  const count = TENT_READINGS.toLocaleString('en');
  yield makeLine(`record.csv of ${count} readings (memory grew by ${Math.round(grownMb)} MB)`, 's', 'at most 2', pairs);
}

async function timed(work: () => Promise<void>): Promise<number> {
  const startMs = performance.now();
  await work();
  return (performance.now() - startMs) / SECOND_MS;
}

async function selectAndWrite({ file, folder }: StoredSite): Promise<void> {
  const db = openDatabaseToRead(file);
  const probes = Array.from({ length: PROBES }, (_, i) => i + 1).join(',');
  const rows = db.prepare<[], { probe: number; t: number; temperature: number; humidity: number; flags: number }>(
    `SELECT probe, t, temperature, humidity, flags FROM readings WHERE probe IN (${probes}) ORDER BY t, probe`,
  );
  function* lines() {
    let text = '';
    for (const { probe, t, temperature, humidity, flags } of rows.iterate()) {
      text += `reading,${new Date(t).toISOString()},Probe ${probe},${temperature / 1e4},${humidity / 1e4},${flags}\r\n`;
      if (text.length < 65_536) continue;
      yield text;
      text = '';
    }
    yield text;
  }
  await pipeline(Readable.from(lines()), createWriteStream(join(folder, 'floor.csv')));
  db.close();
}

async function writeRecord({ file, folder }: StoredSite): Promise<void> {
  const store = openStore({ file, nowMs: END_MS });
  const request = { siteName: 'Bench', zone: 'Europe/Amsterdam', altitudeM: 0, nowMs: END_MS, version: 'bench' };
  const gathered = await gatherRecord(store, BATCH, request);
  await pipeline(Readable.from(recordCsv(store, gathered)), createWriteStream(join(folder, 'record.csv')));
  await store.close();
}
