// A tent at night, in the middle of venting: set up through the HTTP interface, its climate simulated and stored, its gaps logged by the crew.
import type { VentingView } from '../../shared/api/venting.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { HOUR_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { openTestApp } from './open-test-app.ts';
import { createTestClock } from './test-clock.ts';
import { type GapChange, runVentedTent, type TentRun } from './vented-tent.ts';

/** When venting began. */
export const VENTING_MS = Date.parse('2026-03-06T07:00:00Z');
const CLOSED_MS = VENTING_MS - 97 * HOUR_MS;
const PROBES = { canopy: [1, 2], house: 3 } as const;
/** Opened three times so far. */
export const ventedTent: Omit<TentRun, 'toMs'> = {
  fromMs: VENTING_MS + 12 * HOUR_MS,
  house: { temperature: 19.5, humidity: 55 },
  humidity: 90,
  firstGapPercent: 8,
  gaps: [20, 30, 42].map((gapPercent, i) => ({ atMs: VENTING_MS + (13 + 2 * i) * HOUR_MS, gapPercent })),
};

/** One narrow step all through venting, with a grace that lets it be reached in one move. */
function stepProfile() {
  const shipped = standardProfiles[0]?.document;
  if (shipped === undefined) throw new Error('a profile is shipped');
  const level = (value: number) => ({ shape: 'constant', value, basis: 'of the test' }) as const;
  const humidity = { low: level(55), high: level(64) };
  const stages = shipped.stages.map((stage) => (stage.stage === 'venting' ? { ...stage, humidity } : stage));
  return { ...shipped, name: 'One step', grace: { ...shipped.grace, humidityPerHour: 20 }, stages };
}

/** Opens it before anything is measured or logged. */
export async function openVentingSite() {
  const clock = createTestClock(CLOSED_MS);
  const { app, api } = await openTestApp({ clock });
  await api.put('/settings', { siteName: 'Test', zone: 'UTC', altitudeM: 0, temperatureUnit: '°C', mappings: [] });
  const profile = await api.post<{ id: string }>('/profiles', { id: 'one-step', document: stepProfile() });
  const chamber = await api.post<{ id: string }>('/chambers', { name: 'Tent 1' });
  const chamberId = chamber.body.id;
  for (const address of ['a', 'b']) await api.post('/probes', { nodeId: 'n', address, chamberId, place: 'canopy' });
  await api.post('/probes', { nodeId: 'n', address: 'house', place: 'house' });
  const wanted = { chamberId, profileId: profile.body.id, code: 'B-1', plants: 100, closedAt: utcText(CLOSED_MS) };
  const batch = await api.post<{ id: string }>('/batches', wanted);
  const path = `/batches/${batch.body.id}`;
  return {
    ...{ app, api, clock, chamberId, batchId: batch.body.id },
    log: (atMs: number, kind: string, gapPercent?: number) => {
      clock.set(Math.max(clock.nowMs(), atMs));
      return api.post(`${path}/log`, { kind, at: utcText(atMs), ...(gapPercent !== undefined && { gapPercent }) });
    },
    venting: async () => (await api.get<VentingView>(`${path}/venting`)).body,
    /** What the probes measured is stored; the last of it arrives as it would from a node. */
    async measure(gaps: readonly GapChange[], toMs: number) {
      const run = runVentedTent({ ...ventedTent, gaps, toMs }, PROBES);
      await app.store.commit({ readings: run.readings.slice(0, -3) });
      clock.set(toMs + SECOND_MS);
      const last = run.readings.slice(-3).map(({ probe, temperature, humidity }) => ({
        ...{ temperature, humidity, time: utcText(toMs) },
        probe: ['a', 'b', 'house'][probe - 1],
      }));
      const payload = new TextEncoder().encode(JSON.stringify(last));
      await app.intake.push({ topic: 'takewell/v1/n/readings', payload, arrivalMs: clock.nowMs(), retained: false });
      const canopy = last.slice(0, 2).map(({ humidity }) => humidity ?? 0);
      return canopy.reduce((sum, humidity) => sum + humidity, 0) / 2;
    },
  };
}

export type VentingSite = Awaited<ReturnType<typeof openVentingSite>>;

/** The crew has opened it three times, looked after its plants, and waits: now is two hours after the last opening. */
export async function openAfterSteps(): Promise<VentingSite & { readonly askedMs: number }> {
  const site = await openVentingSite();
  await site.log(ventedTent.fromMs, 'gap', ventedTent.firstGapPercent);
  for (const { atMs, gapPercent } of ventedTent.gaps) {
    await site.log(atMs, 'gap', gapPercent);
    await site.log(atMs + HOUR_MS, 'erect');
  }
  const askedMs = VENTING_MS + 19 * HOUR_MS;
  await site.measure(ventedTent.gaps, askedMs);
  return { ...site, askedMs };
}
