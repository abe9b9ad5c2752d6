// A batch with everything a record may hold, in a real store: two and a half healing days over the end of summer time, a gap, bad and late
// readings, an alarm with its whole life, holds, answered and missed checks, and texts that would be formulas.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RecordRequest } from '../../../server/record/gather-record.ts';
import { openStore } from '../../../server/store/open-store.ts';
import type { Probe, Store } from '../../../server/store/store.ts';
import type { Alarm } from '../../../shared/alarms/alarm.ts';
import type { AlarmChange } from '../../../shared/alarms/watch-state.ts';
import type { Batch } from '../../../shared/healing/batch.ts';
import { findStandardProfile } from '../../../shared/healing/standard-profiles.ts';
import type { Flag, Reading } from '../../../shared/readings/reading.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

/** Closed at noon in Amsterdam; clocks go back in the night after. */
export const CLOSED_MS = Date.parse('2026-10-24T10:00:00Z');
export const OPENED_MS = CLOSED_MS - 2 * HOUR_MS;
export const FINISHED_MS = CLOSED_MS + 58 * HOUR_MS;
export const SILENCE_MS = 15 * MINUTE_MS;
/** Nothing is heard between these. */
export const GAP = { fromMs: CLOSED_MS + 30 * HOUR_MS, toMs: CLOSED_MS + 32 * HOUR_MS };
/** A heat peak reaches 30 °C here. */
export const PEAK_MS = CLOSED_MS + 3 * HOUR_MS;

export const request: RecordRequest = {
  siteName: 'Lindehof',
  zone: 'Europe/Amsterdam',
  altitudeM: 12,
  nowMs: FINISHED_MS + HOUR_MS,
  version: '1.2.3',
};

export const batch: Batch = {
  id: 'b-sample',
  code: '=B-17',
  chamberId: 'tent-1',
  profileId: 'tomato-common-practice',
  profileVersion: 1,
  scion: 'red, early',
  rootstock: 'strong "S"',
  method: 'splice',
  trays: 12,
  plants: 1000,
  openedMs: OPENED_MS,
  closedMs: CLOSED_MS,
  finishedMs: null,
  takenPlants: null,
  holds: [],
  moves: [],
};

export interface SampleBatch {
  readonly store: Store;
  readonly folder: string;
  readonly file: string;
  close(): Promise<void>;
}

/** Makes the store in a folder of its own. */
export async function openSampleBatch(): Promise<SampleBatch> {
  const folder = mkdtempSync(join(tmpdir(), 'takewell-record-'));
  const file = join(folder, 'takewell.sqlite');
  const store = openStore({ file, nowMs: OPENED_MS });
  await fill(store);
  return {
    store,
    folder,
    file,
    async close() {
      await store.close();
      rmSync(folder, { recursive: true });
    },
  };
}

async function fill(store: Store): Promise<void> {
  await store.chambers.add({ id: 'tent-1', name: 'Tent 1', createdMs: OPENED_MS });
  await store.settings.put('site', { ...siteOf(request), temperatureUnit: '°C', mappings: [] });
  const profile = findStandardProfile('tomato-common-practice');
  if (profile === null) throw new Error('the shipped tomato profile is gone');
  await store.profiles.addVersion(profile.id, profile.document, OPENED_MS, 'shipped');
  for (const probe of probes) await store.probes.add(probe);
  await store.probes.place(1, { chamberId: 'tent-1', place: 'canopy' }, OPENED_MS);
  await store.probes.place(2, { chamberId: null, place: 'house' }, OPENED_MS);
  await store.commit({ readings: [...canopyReadings(), ...houseReadings()] });
  await store.batches.add(batch);
  await addLife(store);
}

function siteOf({ siteName, zone, altitudeM }: RecordRequest) {
  return { siteName, zone, altitudeM };
}

const probes: Probe[] = [1, 2].map((number) => ({
  number,
  id: `p${number}`,
  nodeId: 'node-7',
  address: number === 1 ? 'canopy-1' : 'house',
  name: number === 1 ? '@canopy' : 'House, north',
  silenceMs: SILENCE_MS,
  outOfService: false,
  discoveredMs: OPENED_MS,
  placement: null,
}));

/** One every five minutes; every 50th has a failed temperature, every 70th no humidity, every 90th came late. */
export function canopyReadings(): (Reading & { probe: number })[] {
  return everyFiveMinutes(OPENED_MS).flatMap((timeMs, i) => {
    if (timeMs > GAP.fromMs && timeMs < GAP.toMs) return [];
    const warmth = Math.abs(timeMs - PEAK_MS) < HOUR_MS ? 30 - (Math.abs(timeMs - PEAK_MS) / HOUR_MS) * 8 : 22;
    const temperature = i % 50 === 49 ? 71 : round(warmth + Math.sin(i / 9) / 3);
    const humidity = i % 70 === 69 ? null : round(94 + 3 * Math.cos(i / 31));
    const late = i % 90 === 89;
    return [
      {
        probe: 1,
        timeMs,
        temperature,
        humidity,
        temperatureFlag: (i % 50 === 49 ? 4 : 1) as Flag,
        humidityFlag: (humidity === null ? 9 : 1) as Flag,
        receivedMs: timeMs + (late ? HOUR_MS : 250),
        late,
      },
    ];
  });
}

function houseReadings(): (Reading & { probe: number })[] {
  return everyFiveMinutes(OPENED_MS).map((timeMs) => ({
    probe: 2,
    timeMs,
    temperature: 18.5,
    humidity: 65,
    temperatureFlag: 1,
    humidityFlag: 1,
    receivedMs: timeMs + 250,
    late: false,
  }));
}

function everyFiveMinutes(fromMs: number): number[] {
  return Array.from(
    { length: Math.floor((FINISHED_MS - fromMs) / (5 * MINUTE_MS)) + 1 },
    (_, i) => fromMs + i * 5 * MINUTE_MS,
  );
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

async function addLife(store: Store): Promise<void> {
  const { id } = batch;
  await store.batches.addLog({
    id: 'l1',
    batchId: id,
    atMs: CLOSED_MS,
    kind: 'closed',
    gapPercent: null,
    note: '',
    person: 'Noor',
  });
  await store.batches.addLog({
    id: 'l2',
    batchId: id,
    atMs: PEAK_MS,
    kind: 'mist',
    gapPercent: null,
    note: '=HYPERLINK("x")',
    person: 'Noor',
  });
  await store.batches.addLog({
    id: 'l3',
    batchId: id,
    atMs: PEAK_MS + HOUR_MS,
    kind: 'gap',
    gapPercent: 12.5,
    note: '',
    person: 'Bram',
  });
  await store.batches.answer({
    batchId: id,
    checkId: 'film-wet.1',
    answer: 'yes',
    atMs: PEAK_MS + MINUTE_MS,
    person: 'Bram',
    note: 'wet all over',
  });
  await store.batches.startHold(id, CLOSED_MS + 40 * HOUR_MS);
  await store.batches.endHold(id, CLOSED_MS + 44 * HOUR_MS);
  for (const [change, state, atMs, person] of alarmLife)
    await store.commit({ watch: alarmStep(change, state, atMs, person) });
  await store.batches.update(id, { finishedMs: FINISHED_MS, takenPlants: 942 });
}

const alarmLife: [AlarmChange, Alarm['state'], number, string | null][] = [
  ['occurred', 'unacknowledged', PEAK_MS - 14 * MINUTE_MS, null],
  ['acknowledged', 'acknowledged', PEAK_MS, 'Bram'],
  ['returned', 'normal', PEAK_MS + 20 * MINUTE_MS, null],
];

function alarmStep(change: AlarmChange, state: Alarm['state'], atMs: number, person: string | null) {
  const alarm: Alarm = {
    id: 'tent-1.heat.1',
    chamberId: 'tent-1',
    batchId: batch.id,
    rule: 'heat',
    probeId: null,
    state,
    level: state === 'normal' ? 0 : 1,
    priority: 'high',
    sinceMs: PEAK_MS - 15 * MINUTE_MS,
    occurredMs: PEAK_MS - 14 * MINUTE_MS,
    limit: 28,
    value: 28.4,
    peak: 30.1,
    peakMs: PEAK_MS,
    acknowledgedMs: atMs >= PEAK_MS ? PEAK_MS : null,
    acknowledgedBy: atMs >= PEAK_MS ? 'Bram' : null,
    returnedMs: state === 'normal' ? atMs : null,
    shelvedUntilMs: null,
    shelvedReason: null,
  };
  const from = alarmLife[alarmLife.findIndex(([one]) => one === change) - 1]?.[1] ?? 'normal';
  return {
    entries: [],
    notices: [],
    changes: [{ type: 'alarm-changed' as const, change, atMs, from, alarm, person, note: '' }],
  };
}
