// Work in the tent and steps of venting, logged over HTTP: the air's alarms are quiet so long, over a restart too, and heat never is.
import { describe, expect, it } from 'vitest';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openBatch, openTent, type Tent } from '../../support/open-tent.ts';

async function openDisturbed(entry: object) {
  const tent = await openTent();
  const batch = await openBatch(tent);
  const { status } = await tent.api.post(`/batches/${batch.id}/log`, entry);
  expect(status).toBe(200);
  return { ...tent, batch };
}
const rules = async (tent: Tent) => (await tent.alarms()).map(({ rule, state }) => `${rule} ${state}`);

describe('work in the tent', () => {
  it('is shown with its end and who, and quiets dryness so long', async () => {
    const tent = await openDisturbed({ kind: 'working', minutes: 20 });
    expect((await tent.chamber()).suppression).toEqual({
      ...{ cause: 'working', until: '2026-03-01T12:30:00Z', by: 'Test manager' },
    });
    await tent.stay(24, 29 * MINUTE_MS, 87);
    expect(await rules(tent)).toEqual([]);
    await tent.stay(24, MINUTE_MS, 87);
    expect(await rules(tent)).toEqual(['dry unacknowledged']);
    expect((await tent.chamber()).suppression).toBeNull();
  });

  it('never quiets heat', async () => {
    const tent = await openDisturbed({ kind: 'working', minutes: 20 });
    await tent.stay(28.5, MINUTE_MS, 95);
    expect(await rules(tent)).toEqual(['heat unacknowledged']);
  });

  it('ends when it is done, ten minutes for the air included', async () => {
    const tent = await openDisturbed({ kind: 'working', minutes: 60 });
    await tent.stay(24, 5 * MINUTE_MS, 95);
    await tent.api.post(`/batches/${tent.batch.id}/log`, { kind: 'work-done' });
    expect((await tent.chamber()).suppression?.until).toBe('2026-03-01T12:15:00Z');
  });

  it('suppresses what stands, over a restart too, and brings it back', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent);
    await tent.stay(24, 5 * MINUTE_MS, 87);
    expect(await rules(tent)).toEqual(['dry unacknowledged']);
    await tent.api.post(`/batches/${batch.id}/log`, { kind: 'working', minutes: 5 });
    expect(await rules(tent)).toEqual(['dry suppressed']);
    const again = await tent.reopen(10 * MINUTE_MS);
    await again.stay(24, 4 * MINUTE_MS, 87);
    expect(await rules(again)).toEqual(['dry suppressed']);
    await again.stay(24, MINUTE_MS, 87);
    expect(await rules(again)).toEqual(['dry unacknowledged']);
  });

  it.each([
    { entry: { kind: 'working' }, why: 'it does not say how long' },
    { entry: { kind: 'working', minutes: 4 }, why: 'shorter than five minutes' },
    { entry: { kind: 'working', minutes: 61 }, why: 'longer than an hour' },
  ])('is refused: $why', async ({ entry }) => {
    const tent = await openTent();
    const { id } = await openBatch(tent);
    expect((await tent.api.post(`/batches/${id}/log`, entry)).status).toBe(400);
  });
});

describe('a step of venting', () => {
  it('quiets the air for half an hour', async () => {
    const tent = await openDisturbed({ kind: 'gap', gapPercent: 20 });
    expect((await tent.chamber()).suppression).toMatchObject({ cause: 'vent-step', until: '2026-03-01T12:30:00Z' });
  });
});

describe('what people see', () => {
  it('limp scions are an alarm at once, with what the plan says to do, until they are seen erect', async () => {
    const tent = await openDisturbed({ kind: 'limp' });
    expect(await tent.alarms()).toMatchObject([
      {
        ...{ rule: 'check-failed', priority: 'high', state: 'unacknowledged' },
        sentence: '● Check answered no, less than a minute ago: “Do the scions stand erect?”',
        advice: 'Close the tent, mist lightly, and hold the plan until they stand.',
      },
    ]);
    await tent.api.post(`/batches/${tent.batch.id}/log`, { kind: 'erect' });
    expect(await rules(tent)).toEqual(['check-failed returned-unacknowledged']);
  });

  it('a check that is not done in time is an alarm until it is answered', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent, {}, 0);
    await tent.measure(24, 95);
    tent.clock.advance(4 * 60 * MINUTE_MS - 1);
    await tent.measure(24, 95);
    expect(await rules(tent)).toEqual([]);
    tent.clock.advance(1);
    await tent.app.tick();
    expect(await rules(tent)).toEqual(['check-overdue unacknowledged']);
    await tent.api.post(`/batches/${batch.id}/checks/film-wet.1`, { answer: 'yes' });
    expect(await rules(tent)).toEqual(['check-overdue returned-unacknowledged']);
  });
});
