// A store in a folder of its own, and the database behind it; both are closed and removed with the test.
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { onTestFinished } from 'vitest';
import { openDatabase } from '../../server/store/open-database.ts';
import { openStore } from '../../server/store/open-store.ts';
import type { Commit, Store } from '../../server/store/store.ts';
import { FLAG, type Reading } from '../../shared/readings/reading.ts';
import { makeTestFolder } from './open-test-app.ts';

export type StoredReading = NonNullable<Commit['readings']>[number];

/** The store as the service has it, and a second connection to look at the tables with. */
export async function openTestStore(): Promise<{ store: Store; db: Database; file: string }> {
  const file = join(await makeTestFolder(), 'takewell.sqlite');
  const store = openStore({ file, nowMs: 0 });
  const db = openDatabase({ file, nowMs: 0 });
  onTestFinished(async () => {
    db.close();
    await store.close();
  });
  return { store, db, file };
}

/** A good reading of probe 1 that came at once, but for what is given. */
export function storedReading(given: Partial<StoredReading> & { readonly timeMs: number }): StoredReading {
  const { timeMs, temperature = 21, humidity = 95 } = given;
  return {
    probe: 1,
    temperature,
    humidity,
    temperatureFlag: temperature === null ? FLAG.missing : FLAG.pass,
    humidityFlag: humidity === null ? FLAG.missing : FLAG.pass,
    receivedMs: timeMs,
    late: false,
    ...given,
  };
}

export async function readRange(
  store: Store,
  probe = 1,
  fromMs = 0,
  toMs = Number.MAX_SAFE_INTEGER,
): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const one of store.readings.range(probe, fromMs, toMs)) readings.push(one);
  return readings;
}
