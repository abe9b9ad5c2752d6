// What a batch was exposed to, over HTTP: parts add up, the record says the same, and a late reading corrects a finished batch.
import { describe, expect, it } from 'vitest';
import type { ExposurePart, ExposureView } from '../../../shared/api/exposure.ts';
import type { BatchRecord } from '../../../shared/api/record.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import { type HealingSite, openHealingSite } from '../../support/open-healing-site.ts';
import { storedReading } from '../../support/open-test-store.ts';

const CLOSED_MS = Date.parse('2026-03-02T06:00:00Z');
/** Venting has begun at 07:00 of the fifth day; nothing was heard from the 40th to the 44th hour. */
const NOW_MS = CLOSED_MS + 110 * HOUR_MS;
const STEP_MS = 10 * MINUTE_MS;

const temperatureAt = (hours: number) => (hours >= 10 && hours <= 12 ? 29.5 : 23);
const isHeard = (hours: number) => hours <= 40 || hours >= 44;

async function openMeasured(): Promise<HealingSite> {
  const site = await openHealingSite({ nowMs: NOW_MS, closedMs: CLOSED_MS });
  await site.api.put('/settings', {
    ...{ siteName: 'Test', zone: 'UTC', altitudeM: 0, temperatureUnit: '°C', mappings: [] },
  });
  const readings = [];
  for (let timeMs = CLOSED_MS; timeMs <= NOW_MS; timeMs += STEP_MS) {
    const hours = (timeMs - CLOSED_MS) / HOUR_MS;
    if (!isHeard(hours)) continue;
    readings.push(storedReading({ probe: site.probe, timeMs, temperature: temperatureAt(hours), humidity: 95 }));
  }
  await site.app.store.commit({ readings });
  return site;
}

async function exposureOf({ api, batchId }: HealingSite): Promise<ExposureView> {
  const answer = await api.get<ExposureView>(`/batches/${batchId}/exposure`);
  expect(answer.status).toBe(200);
  return answer.body;
}

/** Everything of a part that adds up. */
function amounts(part: ExposurePart): number[] {
  const { temperature, humidity } = part.insideCorridor;
  return [
    ...[part.minutesAbove['28'], part.minutesAbove['29'], part.degreeHoursAbove['28'], part.vpdKpaHours],
    ...[part.unknownHours, temperature.hours, temperature.judgedHours, humidity.hours, humidity.judgedHours],
  ].map((value) => value ?? Number.NaN);
}

function added(parts: readonly ExposurePart[]): number[] {
  return parts.map(amounts).reduce((sum, one) => sum.map((value, i) => value + (one[i] ?? 0)));
}

describe('the exposure of a batch', () => {
  it('is told per day, stage and batch, and the parts add up to the whole', async () => {
    const { days, stages, whole } = await exposureOf(await openMeasured());
    if (whole === null) throw new Error('the chamber is closed');
    expect(days.map(({ day }) => day)).toEqual([1, 2, 3, 4, 5]);
    expect(stages.map(({ stage }) => stage)).toEqual(['closed', 'venting']);
    expect(stages[1]?.from).toBe(utcText(CLOSED_MS + 97 * HOUR_MS));
    for (const parts of [days, stages]) {
      added(parts).forEach((value, i) => {
        expect(value).toBeCloseTo(amounts(whole)[i] ?? Number.NaN, 4);
      });
    }
    // Two hours at 29.5, and the last and first tenth of the ten minutes up to and down from it: (29.5 − 28)/6.5 of them.
    const slope = (2 * 10 * 1.5) / 6.5;
    expect(whole.minutesAbove['28']).toBeCloseTo(120 + slope, 4);
    expect(whole.degreeHoursAbove['28']).toBeCloseTo(3 + (slope / 60) * 0.75, 4);
    expect(whole.unknownHours).toBeCloseTo(4, 4);
    expect(whole.insideCorridor.temperature.judgedHours).toBeCloseTo(106, 4);
  });

  it('is what stands in the record', async () => {
    const site = await openMeasured();
    const { days, stages, whole } = await exposureOf(site);
    const { body } = await site.api.get<BatchRecord>(`/batches/${site.batchId}/record.json`);
    const same = ({ from, to, minutesAbove, degreeHoursAbove, unknownHours, vpdKpaHours }: ExposurePart) => ({
      ...{ from, to, minutesAbove, degreeHoursAbove, unknownHours, vpdKpaHours },
    });
    expect(body.days).toMatchObject(days.map(same));
    expect(body.stageFigures).toMatchObject(stages.map(same));
    expect(body.whole).toMatchObject(whole === null ? {} : same(whole));
    const csv = (await site.api.text(`/batches/${site.batchId}/record.csv`)).body;
    expect(csv).toMatch(new RegExp(`degree_hours_above_28_c,stage closed,${whole?.degreeHoursAbove['28']},`));
  });

  it('of a finished batch takes in a late reading at the latest ten minutes after', async () => {
    const site = await openMeasured();
    await site.api.post(`/batches/${site.batchId}/finish`, { takenPlants: 90 });
    const max = async () => (await exposureOf(site)).whole?.temperature.max;
    expect(await max()).toBe(29.5);
    const late = { timeMs: CLOSED_MS + 11 * HOUR_MS + MINUTE_MS, temperature: 31, late: true };
    await site.app.store.commit({ readings: [storedReading({ probe: site.probe, ...late })] });
    site.clock.advance(10 * MINUTE_MS);
    expect(await max()).toBe(31);
  });

  it('has no days and no whole before the chamber is closed', async () => {
    const site = await openHealingSite({ nowMs: NOW_MS, closedMs: CLOSED_MS });
    await site.api.post(`/batches/${site.batchId}/finish`, { takenPlants: 1 });
    const wanted = { chamberId: site.chamberId, profileId: 'tomato-common-practice', code: 'B-2', plants: 1 };
    const { body } = await site.api.post<{ id: string }>('/batches', wanted);
    site.clock.advance(HOUR_MS);
    const view = await exposureOf({ ...site, batchId: body.id });
    expect(view).toMatchObject({ days: [], whole: null, stages: [{ stage: 'loading', unknownHours: 1 }] });
  });

  it('of a batch that is not there is not found', async () => {
    const { api } = await openHealingSite({ nowMs: NOW_MS });
    expect((await api.get('/batches/none/exposure')).status).toBe(404);
  });
});
