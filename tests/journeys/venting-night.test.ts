// A night of venting: the crew opens a simulated tent in steps and logs them, asks what to open to next, does it, and the air comes to where it
// was said to come. The tent's physics is richer than the fit's.
import { expect, test } from 'vitest';
import type { VentingView } from '../../shared/api/venting.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { openTestApp } from '../support/open-test-app.ts';
import { createTestClock } from '../support/test-clock.ts';
import { type GapChange, runVentedTent, type TentRun } from '../support/vented-tent.ts';

const VENTING_MS = Date.parse('2026-03-06T07:00:00Z');
const CLOSED_MS = VENTING_MS - 97 * HOUR_MS;
const PROBES = { canopy: [1, 2], house: 3 } as const;
const tent: Omit<TentRun, 'toMs'> = {
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

async function openSite() {
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
    ...{ app, api, clock },
    log: (atMs: number, kind: string, gapPercent?: number) => {
      clock.set(Math.max(clock.nowMs(), atMs));
      return api.post(`${path}/log`, { kind, at: utcText(atMs), ...(gapPercent !== undefined && { gapPercent }) });
    },
    venting: async () => (await api.get<VentingView>(`${path}/venting`)).body,
    /** What the probes measured is stored; the last of it arrives as it would from a node. */
    async measure(gaps: readonly GapChange[], toMs: number) {
      const run = runVentedTent({ ...tent, gaps, toMs }, PROBES);
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

test('what is proposed is where the air comes to, within the stated ±, and it says what that rests on', async () => {
  const site = await openSite();
  await site.log(tent.fromMs, 'gap', tent.firstGapPercent);
  for (const { atMs, gapPercent } of tent.gaps) {
    await site.log(atMs, 'gap', gapPercent);
    await site.log(atMs + HOUR_MS, 'erect');
  }
  const askedMs = VENTING_MS + 19 * HOUR_MS;
  await site.measure(tent.gaps, askedMs);

  const asked = await site.venting();
  expect(asked).toMatchObject({ phase: 'under-way', gapPercent: 42, step: { low: 55, high: 64 }, askErect: null });
  expect(asked.fit?.levels.map(({ gapPercent }) => gapPercent)).toEqual([30, 42]);
  for (const { ratePerHour, standardError, windows } of asked.fit?.levels ?? []) {
    expect(standardError).toBeGreaterThan(0);
    expect(standardError).toBeLessThan(ratePerHour / 4);
    expect(windows).toBe(1);
  }
  const { proposal } = asked;
  if (proposal === null) throw new Error(`no proposal: ${asked.reason}`);
  expect(proposal.gapPercent).toBeGreaterThan(42);
  expect(proposal.expectedHumidity - proposal.plusMinus).toBeGreaterThanOrEqual(55);
  expect(proposal.plusMinus).toBeLessThan(6);
  expect(proposal.settlesInMinutes).toBeGreaterThan(0);

  const opened = { atMs: askedMs + 2 * MINUTE_MS, gapPercent: proposal.gapPercent };
  await site.log(opened.atMs, 'gap', opened.gapPercent);
  const settledMs = opened.atMs + (proposal.settlesInMinutes + 20) * MINUTE_MS;
  const came = await site.measure([...tent.gaps, opened], Math.ceil(settledMs / MINUTE_MS) * MINUTE_MS);
  expect(Math.abs(came - proposal.expectedHumidity)).toBeLessThanOrEqual(proposal.plusMinus);

  const after = await site.venting();
  expect(after.askErect).toEqual({ gapPercent: proposal.gapPercent, since: utcText(opened.atMs) });
  await site.log(site.clock.nowMs(), 'limp');
  const limp = await site.venting();
  expect(limp).toMatchObject({
    proposal: null,
    why: 'limp',
    limp: { acts: ['close', 'mist', 'hold'], backToPercent: 42 },
  });
});
