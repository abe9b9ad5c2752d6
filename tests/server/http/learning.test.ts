// What finished batches teach, over HTTP: take with its interval beside exposure, what goes with what, and batches over each other.
import { describe, expect, it } from 'vitest';
import type { LearningView, OverlayView } from '../../../shared/api/learning.ts';
import type { Batch } from '../../../shared/healing/batch.ts';
import { wilsonInterval } from '../../../shared/learning/wilson-interval.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { type HealingSite, openHealingSite } from '../../support/open-healing-site.ts';
import { storedReading } from '../../support/open-test-store.ts';

const START_MS = Date.parse('2026-03-02T06:00:00Z');
const STEP_MS = 10 * MINUTE_MS;
/** Each batch is four days in the one chamber, the next follows a day later. */
const HEALING_MS = 4 * DAY_MS;

interface Past {
  /** °C of one hour on the second day. */
  readonly hottest: number;
  readonly taken: number;
}

/** A site whose chamber has seen these batches of 1000 plants, the first on `START_MS`, all of them measured. */
async function openPast(past: readonly Past[]) {
  const closedMs = START_MS + past.length * (HEALING_MS + DAY_MS);
  const site = await openHealingSite({ nowMs: closedMs + DAY_MS, closedMs });
  const { app } = site;
  // The probe stood in the chamber all the time.
  const [probe] = await app.store.probes.list();
  await app.store.probes.place(probe?.number ?? 0, { chamberId: site.chamberId, place: 'canopy' }, START_MS);
  const ids: string[] = [];
  for (const [i, { hottest, taken }] of past.entries()) {
    const openedMs = START_MS + i * (HEALING_MS + DAY_MS);
    const batch = pastBatch(site, `past-${i}`, openedMs, taken);
    await app.store.batches.add(batch);
    ids.push(batch.id);
    const readings = [];
    for (let timeMs = openedMs; timeMs <= openedMs + HEALING_MS; timeMs += STEP_MS) {
      const hours = (timeMs - openedMs) / HOUR_MS;
      const temperature = hours >= 30 && hours <= 31 ? hottest : 22;
      readings.push(storedReading({ probe: site.probe, timeMs, temperature, humidity: 90 + (i % 3) }));
    }
    await app.store.commit({ readings });
  }
  return { ...site, ids };
}

function pastBatch({ chamberId }: HealingSite, id: string, openedMs: number, takenPlants: number): Batch {
  return {
    ...{ id, code: `P-${id}`, chamberId, profileId: 'tomato-common-practice', profileVersion: 1 },
    ...{ scion: 'A', rootstock: 'B', method: '', trays: 10, plants: 1000, takenPlants, holds: [], moves: [] },
    ...{ openedMs, closedMs: openedMs, finishedMs: openedMs + HEALING_MS },
  };
}

const learn = async ({ api }: Pick<HealingSite, 'api'>) => (await api.get<LearningView>('/batches/learning')).body;

describe('learning from batches', () => {
  const hotter: readonly Past[] = [27, 28.5, 29, 30, 31, 32].map((hottest, i) => ({ hottest, taken: 980 - 20 * i }));

  it('shows take with its interval beside exposure, the newest first, and leaves out what is not finished', async () => {
    const { batches, pending } = await learn(await openPast(hotter.slice(0, 3)));
    expect(pending).toBe(0);
    expect(batches.map(({ id }) => id)).toEqual(['past-2', 'past-1', 'past-0']);
    expect(batches[0]).toMatchObject({ chamberName: 'Tent 1', plants: 1000, takenPlants: 940, unknownHours: 0 });
    expect(batches[0]?.take).toEqual(wilsonInterval(940, 1000));
    // An hour at 29, and a minute and a half of each ten minutes up to it and down from it: to tenths.
    expect(batches[0]?.exposures['degree-hours-above-28']).toBe(1);
    expect(batches.map(({ exposures }) => exposures['highest-temperature'])).toEqual([29, 28.5, 27]);
  });

  it('says with few batches that they are too few, with six in perfect order “perhaps”, always with their number', async () => {
    const few = await learn(await openPast(hotter.slice(0, 4)));
    expect(few.associations.map(({ strength }) => strength)).toContain('too-few');
    expect(few.associations.map(({ strength }) => strength)).not.toContain('perhaps');
    const { associations } = await learn(await openPast(hotter));
    const heat = associations.find(({ exposure }) => exposure === 'highest-temperature');
    expect(heat).toMatchObject({ strength: 'perhaps', batches: 6, tau: 1 });
    expect(heat?.pairs).toEqual({ concordant: 15, discordant: 0, tied: 0 });
    expect(associations.some(({ strength }) => strength === 'likely' || strength === 'very-likely')).toBe(false);
  });

  it('answers an empty site', async () => {
    const site = await openHealingSite({ nowMs: START_MS });
    expect(await learn(site)).toEqual({ batches: [], associations: [], pending: 0 });
  });

  it('is no batch called “learning”, and a batch keeps its own address', async () => {
    const site = await openPast(hotter.slice(0, 1));
    expect((await site.api.get<{ id: string }>('/batches/past-0')).body.id).toBe('past-0');
    expect((await site.api.get('/batches/learnin')).status).toBe(404);
  });
});

describe('batches over each other', () => {
  const overlay = (site: HealingSite, query: string) => site.api.get<OverlayView>(`/batches/overlay?${query}`);

  it('stand on one grid of healing time, with the corridor of the first', async () => {
    const site = await openPast([
      { hottest: 30, taken: 900 },
      { hottest: 25, taken: 950 },
    ]);
    const { body, status } = await overlay(site, 'ids=past-0,past-1&points=96');
    expect(status).toBe(200);
    expect(body.stepHours).toBe(1);
    expect(body.hours.slice(0, 2)).toEqual([0.5, 1.5]);
    const columns = body.batches.flatMap(({ temperature, humidity }) => [temperature, humidity]);
    const { temperature, humidity } = body.corridor;
    for (const column of [...columns, temperature.low, temperature.high, humidity.low, humidity.high])
      expect(column).toHaveLength(96);
    expect(body.batches.map((batch) => batch.temperature[30])).toEqual([30, 25]);
    expect(body.batches.map((batch) => batch.humidity[10])).toEqual([90, 91]);
    expect(humidity.low[48]).toBe(90);
  });

  it('one that is still healing ends at now, and the rest of its columns is a gap', async () => {
    const site = await openPast([{ hottest: 30, taken: 900 }]);
    const { body } = await overlay(site, `ids=past-0,${site.batchId}&points=96`);
    expect(body.batches[1]?.humidity.every((value) => value === null)).toBe(true);
    expect(body.batches[0]?.humidity.at(-1)).toBe(90);
  });

  it.each([
    { query: '', status: 400, why: 'no batch is named' },
    { query: 'ids=', status: 400, why: 'none is named' },
    { query: 'ids=a,b,c,d,e,f,g,h,i', status: 400, why: 'more than eight' },
    { query: 'ids=past-0&points=9', status: 400, why: 'too few points' },
    { query: 'ids=past-0,none', status: 404, why: 'one of them is not there' },
    { query: 'ids=a%20b', status: 400, why: 'no id looks like that' },
  ])('$query is answered $status: $why', async ({ query, status }) => {
    const site = await openPast([{ hottest: 25, taken: 900 }]);
    expect((await overlay(site, query)).status).toBe(status);
  });

  it('a batch that is not closed cannot be laid over others', async () => {
    const site = await openPast([{ hottest: 25, taken: 900 }]);
    await site.api.post(`/batches/${site.batchId}/finish`, { takenPlants: 1 });
    const wanted = { chamberId: site.chamberId, profileId: 'tomato-common-practice', code: 'open', plants: 1 };
    const { body } = await site.api.post<{ id: string }>('/batches', wanted);
    expect((await overlay(site, `ids=${body.id}`)).status).toBe(409);
  });
});
