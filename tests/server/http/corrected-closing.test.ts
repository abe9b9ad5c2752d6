// A closing time that was entered wrong and corrected days later: stage, checks and exposure as if it had been right from the start, in the week in
// which the clock is moved, with a hold and an early move before the correction.
import { expect, it } from 'vitest';
import type { BatchView } from '../../../shared/api/batches.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openTent } from '../../support/open-tent.ts';

/** Friday before summer time begins in Amsterdam. */
const START_MS = Date.parse('2026-03-27T18:00:00Z');
const CLOSED_MS = START_MS - 30 * HOUR_MS;
const settings = { siteName: 'Test', zone: 'Europe/Amsterdam', altitudeM: 0, temperatureUnit: '°C', mappings: [] };

/** The batch after two and a half days, entered as closed `wrongMs` too late (negative: too early). */
async function liveThrough(wrongMs: number) {
  const tent = await openTent({ startMs: START_MS });
  await tent.api.put('/settings', settings);
  const openedAt = utcText(CLOSED_MS - 20 * HOUR_MS);
  const { id } = await openBatch(tent, { openedAt, closedAt: utcText(CLOSED_MS + wrongMs) });
  for (let step = 0; step < 360; step += 1) {
    if (step === 60) expect((await tent.api.post(`/batches/${id}/hold`, { reason: 'not erect yet' })).status).toBe(200);
    if (step === 96) expect((await tent.api.post(`/batches/${id}/resume`, {})).status).toBe(200);
    if (step === 240) expect((await tent.api.patch(`/batches/${id}`, { moveOnTo: 'venting' })).status).toBe(200);
    await tent.measure(22 + 7 * Math.sin(step / 40), 92 + (step % 7));
    tent.clock.advance(10 * MINUTE_MS);
  }
  if (wrongMs !== 0) await tent.api.patch(`/batches/${id}`, { closedAt: utcText(CLOSED_MS) });
  const {
    log: _,
    id: _id,
    chamberId: _chamber,
    ...batch
  } = (await tent.api.get<BatchView & { log?: unknown }>(`/batches/${id}`)).body;
  const checks = (await tent.api.get<{ items: unknown[] }>(`/batches/${id}/checks`)).body;
  const record = (await tent.api.get<Record<string, unknown>>(`/batches/${id}/record.json`)).body;
  const limits = (await tent.chamber()).limits;
  return { batch, checks, limits, days: record.days, stages: record.stages, whole: record.whole };
}

it('entered nine hours too late or fifteen too early and corrected, all is as if it had been right', async () => {
  const right = await liveThrough(0);
  expect(right.batch).toMatchObject({ stage: 'venting', closedAt: utcText(CLOSED_MS) });
  expect(right.days).toHaveLength(4);
  expect(right.stages).toBeDefined();
  for (const wrongMs of [9 * HOUR_MS, -15 * HOUR_MS]) expect(await liveThrough(wrongMs)).toEqual(right);
}, 180_000);
