// A store filled as years of use would: one tent whose batch is ten days old with eight probes every ten seconds, and as many older readings of other
// probes as wanted. Rows are written bare and rolled up by one statement: only what is in the store matters here, not how it came there.
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { openDatabase } from '../../server/store/open-database.ts';
import { openStore } from '../../server/store/open-store.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { DAY_MS, MINUTE_MS, SECOND_MS } from '../../shared/units.ts';

export const PROBES = 8;
export const STEP_MS = 10 * SECOND_MS;
export const DAYS = 10;
/** Whole minutes, so that the newest reading is of now. */
export const END_MS = Math.floor(Date.now() / MINUTE_MS) * MINUTE_MS;
export const START_MS = END_MS - DAYS * DAY_MS;
export const CHAMBER = 'tent';
export const BATCH = 'batch';
/** What the tent alone holds. */
export const TENT_READINGS = (PROBES * DAYS * DAY_MS) / STEP_MS;
const OTHER_PROBES = 50;

export interface StoredSite {
  readonly folder: string;
  readonly file: string;
  readonly readings: number;
  bytes(): number;
  remove(): void;
}

/** Makes it with about so many readings in all, the tent's own at least. */
export async function makeStoredSite(readings = TENT_READINGS): Promise<StoredSite> {
  const folder = mkdtempSync(join(tmpdir(), 'takewell-bench-'));
  const file = join(folder, 'takewell.sqlite');
  await describeSite(file);
  const db = openDatabase({ file, nowMs: END_MS });
  const bytesBefore = statSync(file).size;
  for (let probe = 1; probe <= PROBES; probe += 1) fillProbe(db, probe, START_MS, TENT_READINGS / PROBES);
  const each = Math.ceil(Math.max(0, readings - TENT_READINGS) / OTHER_PROBES);
  for (let other = 1; other <= OTHER_PROBES; other += 1) fillProbe(db, PROBES + other, START_MS - each * STEP_MS, each);
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
  const bytes = () => statSync(file).size - bytesBefore;
  const remove = () => rmSync(folder, { recursive: true });
  return { folder, file, readings: TENT_READINGS + each * OTHER_PROBES, bytes, remove };
}

async function describeSite(file: string): Promise<void> {
  const store = openStore({ file, nowMs: START_MS });
  const [profile] = standardProfiles;
  if (profile === undefined) throw new Error('no profile is shipped');
  await store.chambers.add({ id: CHAMBER, name: 'Tent', createdMs: START_MS });
  await store.profiles.addVersion(profile.id, profile.document, START_MS, 'bench');
  await store.probes.addNode({
    id: 'node',
    status: 'unknown',
    statusMs: null,
    passwordHash: null,
    discoveredMs: START_MS,
  });
  for (let number = 1; number <= PROBES + OTHER_PROBES; number += 1) {
    const own = { number, id: `p${number}`, nodeId: 'node', address: `a${number}`, name: `Probe ${number}` };
    const rest = { silenceMs: 10 * MINUTE_MS, outOfService: false, discoveredMs: START_MS, placement: null };
    await store.probes.add({ ...own, ...rest });
    if (number <= PROBES) await store.probes.place(number, { chamberId: CHAMBER, place: 'canopy' }, START_MS);
  }
  await store.batches.add({
    ...{ id: BATCH, code: 'B-1', chamberId: CHAMBER, profileId: profile.id, profileVersion: 1 },
    ...{ scion: 'scion', rootstock: 'rootstock', method: 'clip', trays: 10, plants: 1000 },
    ...{ openedMs: START_MS, closedMs: START_MS, enteredMs: START_MS, finishedMs: null, takenPlants: null },
    ...{ holds: [], moves: [] },
  });
  await store.close();
}

function fillProbe(db: Database, probe: number, fromMs: number, count: number): void {
  const insert = db.prepare(
    'INSERT INTO readings (probe, t, temperature, humidity, flags, delay) VALUES (?, ?, ?, ?, 17, 0)',
  );
  const write = db.transaction(() => {
    for (let n = 0; n < count; n += 1) {
      const swing = Math.sin((n + probe * 400) / 1_400);
      const temperature = Math.round((23 + 3 * swing) * 100) * 100;
      insert.run(probe, fromMs + n * STEP_MS, temperature, Math.round((93 - 4 * swing) * 10) * 1_000);
    }
    rollUp(db, probe);
  });
  write.immediate();
}

function rollUp(db: Database, probe: number): void {
  const of = (name: string) => `count(${name}), sum(${name}), min(${name}), max(${name})`;
  db.prepare(
    `INSERT INTO minutes SELECT probe, t / 60000, ${of('temperature')}, ${of('humidity')}, count(*), 0
     FROM readings WHERE probe = ? GROUP BY probe, t / 60000`,
  ).run(probe);
}
