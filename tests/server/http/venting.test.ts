// The next step of the opening over HTTP: when nothing is proposed it says why, and what to do with limp scions. A proposal that comes true is
// a journey of its own.
import { describe, expect, it } from 'vitest';
import type { VentingView } from '../../../shared/api/venting.ts';
import { HOUR_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openTent, TENT_MS, type Tent } from '../../support/open-tent.ts';

const DAY = 24;

async function venting({ api }: Tent, id: string): Promise<VentingView> {
  const answer = await api.get<VentingView>(`/batches/${id}/venting`);
  expect(answer.status).toBe(200);
  return answer.body;
}

/** A tent at 97 %RH with a batch that was closed so many hours ago; it is noon, and venting begins at 07:00 after four days. */
async function closedFor(hours: number) {
  const tent = await openTent();
  const { id } = await openBatch(tent, {}, hours * HOUR_MS);
  await tent.measure(21, 97);
  const log = (body: object) => tent.api.post(`/batches/${id}/log`, body);
  return { tent, id, log, ask: () => venting(tent, id) };
}

describe('no gap is proposed', () => {
  it.each([
    { hours: 30, phase: 'before', why: 'not-yet', say: 'on the second day' },
    // Closed at 16:00: the fifth day begins at 16:00 tomorrow but venting waits for the morning after.
    { hours: 4 * DAY - 4, phase: 'before', why: 'not-yet', say: 'more than half a day before venting' },
    { hours: 5 * DAY, phase: 'under-way', why: 'gap-never-changed', say: 'before anybody has changed the gap' },
    { hours: 12 * DAY, phase: 'over', why: 'over', say: 'when the plan is over' },
  ])('$say: $why', async ({ hours, phase, why }) => {
    const { ask } = await closedFor(hours);
    const view = await ask();
    expect(view).toMatchObject({ phase, why, proposal: null, limp: null, askErect: null, fit: null });
    expect(view.reason).not.toBe('');
  });

  it('within twelve hours of venting, but the step and when it may be opened are told', async () => {
    const tent = await openTent({ startMs: TENT_MS + 10 * HOUR_MS });
    const { id } = await openBatch(tent, {}, 4 * DAY * HOUR_MS);
    await tent.measure(21, 97);
    const opensAt = utcText(TENT_MS + 19 * HOUR_MS);
    expect(await venting(tent, id)).toMatchObject({ phase: 'near', why: 'not-yet', step: { opensAt } });
  });

  it.each([
    ['nl', 'De kier is nog niet veranderd'],
    ['es', 'La abertura aún no se ha cambiado'],
    ['en', 'The gap has not been changed yet'],
  ] as const)('and says why in the language of who asks: %s', async (language, begin) => {
    const { tent, id } = await closedFor(5 * DAY);
    await tent.api.patch('/people/me', { language });
    expect((await venting(tent, id)).reason).toMatch(new RegExp(`^${begin}`));
  });

  it('while the batch is on hold', async () => {
    const { tent, id, ask } = await closedFor(5 * DAY);
    await tent.api.post(`/batches/${id}/hold`);
    expect(await ask()).toMatchObject({ why: 'on-hold', proposal: null });
  });

  it('while no probe says what the air is', async () => {
    const tent = await openTent();
    const { id } = await openBatch(tent, {}, 5 * DAY * HOUR_MS);
    expect(await venting(tent, id)).toMatchObject({ why: 'no-air-now', step: null });
  });

  it('for a finished batch, and nobody is asked after its plants', async () => {
    const { tent, id, log, ask } = await closedFor(5 * DAY);
    await log({ kind: 'gap', gapPercent: 10 });
    await log({ kind: 'limp' });
    await tent.api.post(`/batches/${id}/finish`, { takenPlants: 1 });
    expect(await ask()).toMatchObject({ phase: 'over', why: 'over', limp: null, askErect: null });
  });

  it('air that is too dry has the band of now as its step, and not the next lower one', async () => {
    const { tent, ask } = await closedFor(5 * DAY);
    await tent.measure(21, 60);
    expect((await ask()).step).toMatchObject({ low: 81.3, opensAt: utcText(tent.clock.nowMs()) });
  });
});

describe('after a step', () => {
  it('it is asked whether scions stand, until somebody has said so', async () => {
    const { tent, log, ask } = await closedFor(5 * DAY);
    await log({ kind: 'gap', gapPercent: 10 });
    expect((await ask()).askErect).toEqual({ gapPercent: 10, since: utcText(TENT_MS) });
    tent.clock.advance(HOUR_MS);
    await log({ kind: 'erect' });
    expect((await ask()).askErect).toBeNull();
  });

  it('nobody is asked when the gap was made narrower', async () => {
    const { tent, log, ask } = await closedFor(5 * DAY);
    await log({ kind: 'gap', gapPercent: 20 });
    tent.clock.advance(HOUR_MS);
    await log({ kind: 'gap', gapPercent: 10 });
    expect((await ask()).askErect).toBeNull();
  });

  it('how far the tent stood open while it was loaded is no step', async () => {
    const { tent, log, ask } = await closedFor(5 * DAY);
    const beforeClosing = utcText(TENT_MS - 5 * DAY * HOUR_MS - 1000);
    await log({ kind: 'gap', gapPercent: 30, at: beforeClosing });
    expect(await ask()).toMatchObject({ askErect: null, gapPercent: null, why: 'gap-never-changed' });
    await log({ kind: 'gap', gapPercent: 10, at: utcText(tent.clock.nowMs()) });
    expect((await ask()).askErect).toMatchObject({ gapPercent: 10 });
  });

  it('limp scions: close, mist, hold, each until it is done', async () => {
    const { tent, id, log, ask } = await closedFor(5 * DAY);
    await log({ kind: 'gap', gapPercent: 20 });
    tent.clock.advance(HOUR_MS);
    await log({ kind: 'limp' });
    const said = await ask();
    expect(said).toMatchObject({ why: 'limp', limp: { acts: ['close', 'mist', 'hold'], backToPercent: 0 } });
    tent.clock.advance(60_000);
    await log({ kind: 'gap', gapPercent: 0 });
    expect((await ask()).limp?.acts).toEqual(['mist', 'hold']);
    await log({ kind: 'mist' });
    expect((await ask()).limp?.acts).toEqual(['hold']);
    await tent.api.post(`/batches/${id}/hold`);
    expect((await ask()).limp?.acts).toEqual([]);
  });
});

it('the opening of a batch that is not there is not found', async () => {
  const { api } = await openTent();
  expect((await api.get('/batches/none/venting')).status).toBe(404);
});
