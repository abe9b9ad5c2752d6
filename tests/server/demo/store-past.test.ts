// The past that the demo begins with: days of readings, judged as if they had come in one by one, and a crew that has left nothing open.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { type StoredPast, storePast } from '../../../server/demo/store-past.ts';
import { databaseFile } from '../../../server/settings.ts';
import { openStore } from '../../../server/store/open-store.ts';
import type { Store } from '../../../server/store/store.ts';
import type { Reading } from '../../../shared/readings/reading.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

/** On a spring day in which nothing goes wrong, and on one whose weather has made an alarm. */
const [quiet, warm] = ['2026-04-08T10:00:20Z', '2026-05-05T12:20:00Z'].map((at) => Date.parse(at)) as [number, number];
const folder = mkdtempSync(join(tmpdir(), 'takewell-test-'));
const pasts = new Map<number, StoredPast>();

beforeAll(async () => {
  for (const nowMs of [quiet, warm]) {
    const dataDir = folderOf(nowMs);
    mkdirSync(dataDir);
    pasts.set(nowMs, await storePast(dataDir, nowMs));
  }
});

afterAll(() => rmSync(folder, { recursive: true }));

function folderOf(nowMs: number): string {
  return join(folder, String(nowMs));
}

function openPast(nowMs: number) {
  const past = pasts.get(nowMs);
  if (past === undefined) throw new Error('no such past');
  const store = openStore({ file: databaseFile(folderOf(nowMs)), nowMs });
  onTestFinished(() => store.close());
  return { nowMs, stored: past.stored, store };
}

async function readAll(store: Store, probe: number): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const reading of store.readings.range(probe, 0, Number.MAX_SAFE_INTEGER)) readings.push(reading);
  return readings;
}

it('has a reading of every probe for every minute from the opening of its batch until now, none of them late or doubted', async () => {
  const { nowMs, stored, store } = openPast(quiet);
  const probes = await store.probes.list();
  expect(probes).toHaveLength(11);
  for (const probe of probes) {
    const tent = stored.tents.find(({ chamberId }) => chamberId === probe.placement?.chamberId);
    const fromMs = tent?.tent.batch.openedMs ?? stored.fromMs;
    const readings = await readAll(store, probe.number);
    expect(readings[0]?.timeMs).toBe(fromMs);
    expect(readings).toHaveLength(Math.floor((nowMs - MINUTE_MS - fromMs) / MINUTE_MS) + 1);
    expect(readings.filter(({ late }) => late)).toEqual([]);
    // A probe on wet film is at its top for hours, which makes it suspect.
    if (probe.placement?.place === 'film') continue;
    expect(readings.filter(({ temperatureFlag, humidityFlag }) => Math.max(temperatureFlag, humidityFlag) > 2)).toEqual(
      [],
    );
  }
});

it('raises no false alarm on the way', async () => {
  const { store } = openPast(quiet);
  expect((await store.alarms.page({ limit: 10 })).items).toEqual([]);
});

it('leaves no alarm open where the weather of the past has made one', async () => {
  const { store, stored } = openPast(warm);
  const { items } = await store.alarms.page({ limit: 10 });
  expect(items.length).toBeGreaterThan(0);
  for (const alarm of items) {
    expect(alarm.state).toBe('normal');
    expect(stored.nursery.people.map(({ name }) => name)).toContain(alarm.acknowledgedBy);
  }
});

it('has every check answered that was due more than twenty minutes ago, and each answer in the log', async () => {
  const { store, stored } = openPast(quiet);
  const counts = await Promise.all(
    stored.tents.map(async ({ batchId }) => {
      const answers = await store.batches.answers(batchId);
      const logged = (await store.batches.log(batchId)).filter(({ kind }) => kind === 'check');
      expect(logged.map(({ atMs }) => atMs)).toEqual(answers.map(({ atMs }) => atMs).sort((a, b) => a - b));
      return answers.length;
    }),
  );
  expect(counts[0]).toBeGreaterThanOrEqual(2);
  expect(counts).toEqual([...counts].sort((a, b) => a - b));
});
