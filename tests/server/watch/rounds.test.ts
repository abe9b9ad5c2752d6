// The turns of the watch: by the time that passes, by people, by changes; each on what the turn before has stored.
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openBatch, openHotTent, openTent } from '../../support/open-tent.ts';

describe('time that passes', () => {
  it('raises an alarm without any new reading: one hot reading is enough', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(28.5);
    tent.clock.advance(MINUTE_MS - 1);
    await tent.app.tick();
    expect(await tent.alarms()).toEqual([]);
    tent.clock.advance(1);
    await tent.app.tick();
    expect(await tent.alarms()).toMatchObject([{ rule: 'heat', state: 'unacknowledged' }]);
  });

  it('makes a probe silent, and with it the chamber', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(24);
    tent.clock.advance(10 * MINUTE_MS);
    await tent.app.tick();
    expect(await tent.alarms()).toEqual([]);
    tent.clock.advance(1);
    await tent.app.tick();
    expect(await tent.alarms()).toMatchObject([{ rule: 'silent-probe', probeId: tent.probeId, probeName: 'n1 a' }]);
    tent.clock.advance(MINUTE_MS);
    await tent.app.tick();
    expect((await tent.alarms()).map(({ rule }) => rule)).toEqual(['silent-chamber', 'silent-probe']);
  });

  it('leaves an empty chamber alone, hot or silent', async () => {
    const tent = await openTent();
    await tent.stay(35, 2 * MINUTE_MS);
    tent.clock.advance(HOUR_MS);
    await tent.app.tick();
    expect(await tent.alarms()).toEqual([]);
  });

  it('changes nothing where nothing has changed: a round writes no row', async () => {
    const tent = await openHotTent();
    const before = await tent.app.store.alarms.watches();
    for (let n = 0; n < 3; n += 1) await tent.app.tick();
    expect(await tent.app.store.alarms.watches()).toEqual(before);
    expect(await tent.app.store.alarms.events(tent.hot.id)).toHaveLength(1);
  });
});

describe('a batch that nobody has finished', () => {
  it('is watched past the end of its plan, by its last limits', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent, {}, 20 * 24 * HOUR_MS);
    expect(Date.parse(batch.endsAt ?? '')).toBeLessThan(tent.clock.nowMs());
    expect((await tent.chamber()).limits?.temperature).toMatchObject({ high: 28, highHigh: 29 });
    await tent.stay(30, MINUTE_MS);
    expect(await tent.alarms()).toMatchObject([{ rule: 'heat', priority: 'critical', batchId: batch.id }]);
  });
});

describe('acts of people', () => {
  it('two who acknowledge at once: one has it, the other is told who', async () => {
    const { api, hot } = await openHotTent();
    const answers = await Promise.all([1, 2].map(() => api.post<{ detail?: string }>(`/alarms/${hot.id}/acknowledge`)));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    const refused = answers.find(({ status }) => status === 409);
    expect(refused?.body.detail).toBe('Test manager has acknowledged it already.');
  });

  it('an act and a round at the same moment do not lose each other', async () => {
    const tent = await openHotTent();
    tent.clock.advance(10 * SECOND_MS);
    const shelf = { minutes: 5, reason: 'being mended' };
    await Promise.all([
      tent.measure(29.5),
      tent.app.tick(),
      tent.api.post(`/alarms/${tent.hot.id}/shelve`, shelf),
      tent.app.tick(),
      tent.api.post('/chambers', { name: 'Tent 2' }),
    ]);
    const [alarm] = await tent.alarms();
    expect(alarm).toMatchObject({ state: 'shelved', peak: 29.5 });
    const watches = await tent.app.store.alarms.watches();
    const heat = watches.find(({ chamberId }) => chamberId === tent.chamberId)?.entries['heat'];
    expect(heat?.alarm).toMatchObject({ state: 'shelved', peak: 29.5 });
  });

  it('an alarm of a chamber that was removed can be acted on no more', async () => {
    const { app, hot } = await openHotTent();
    const act = { type: 'acknowledge', alarmId: hot.id, person: 'Ann', nowMs: Date.now() } as const;
    await expect(app.parts.rounds.act('no-such-chamber', act)).rejects.toMatchObject({ code: 'not-found' });
  });
});

describe('a change that fails', () => {
  it('leaves everything as it was, and the next turn goes on', async () => {
    const tent = await openTent();
    const failing = tent.app.parts.rounds.change(
      [tent.chamberId],
      () => Promise.reject(new Error('no')),
      () => ({}),
    );
    await expect(failing).rejects.toThrow('no');
    await expect(tent.app.tick()).resolves.toBeUndefined();
    expect((await tent.chamber()).name).toBe('Tent 1');
  });
});
