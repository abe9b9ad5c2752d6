// The floors of ingest: the same library brokers with nothing behind them, and bare rows into the same table.
import { mkdtempSync, rmSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Aedes } from 'aedes';
import { openDatabase } from '../../server/store/open-database.ts';
import { type Publishing, publishAll } from './publisher.ts';

/** Milliseconds in which the bare broker takes the messages, with a subscriber that does nothing. */
export async function timeBareBroker(publishing: Omit<Publishing, 'port'>): Promise<number> {
  const aedes = await Aedes.createBroker({});
  const server = createServer(aedes.handle);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  await new Promise<void>((resolve) => aedes.subscribe('#', (_packet, done) => done(), resolve));
  const { port } = server.address() as AddressInfo;
  const tookMs = await publishAll({ ...publishing, port });
  await new Promise<void>((resolve) => aedes.close(() => resolve()));
  await new Promise((resolve) => server.close(resolve));
  return tookMs;
}

/** Milliseconds in which rows of one probe go into the table of readings by a prepared insert, so many a transaction, each durable. */
export function timeBareInsert(rows: number, rowsATransaction: number): number {
  const folder = mkdtempSync(join(tmpdir(), 'takewell-bench-'));
  const db = openDatabase({ file: join(folder, 'floor.sqlite'), nowMs: 0 });
  const insert = db.prepare(
    'INSERT INTO readings (probe, t, temperature, humidity, flags, delay) VALUES (1, ?, ?, ?, 17, 0)',
  );
  const write = db.transaction((from: number) => {
    for (let n = from; n < from + rowsATransaction; n += 1)
      insert.run(1_750_000_000_000 + n * 10_000, 210_000 + (n % 100), 950_000 + (n % 50));
  });
  const startMs = performance.now();
  for (let from = 0; from < rows; from += rowsATransaction) write.immediate(from);
  const tookMs = performance.now() - startMs;
  db.close();
  rmSync(folder, { recursive: true });
  return tookMs;
}
