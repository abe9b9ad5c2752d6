// What the watch remembers is in the store: a service that stops and starts goes on as if it had not stopped.
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openBatch, openHotTent, openTent, TENT_MS } from '../../support/open-tent.ts';

describe('after a restart', () => {
  it('an alarm in force is in force, and is not told twice as new', async () => {
    const tent = await openHotTent();
    const before = await tent.chamber();
    const again = await tent.reopen(2 * SECOND_MS);
    expect((await again.chamber()).alarms).toEqual(before.alarms);
    expect(await again.alarms('unacknowledged')).toHaveLength(1);
    const events = await again.app.store.alarms.events(tent.hot.id);
    expect(events.map(({ change }) => change)).toEqual(['occurred']);
  });

  it('an on-delay that was running goes on: the alarm counts from the first hot reading', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.stay(28.5, 40 * SECOND_MS);
    expect(await tent.alarms()).toEqual([]);
    const again = await tent.reopen(19 * SECOND_MS);
    await again.measure(28.5);
    expect(await again.alarms()).toEqual([]);
    again.clock.advance(SECOND_MS);
    await again.measure(28.5);
    expect(await again.alarms()).toMatchObject([
      { rule: 'heat', since: '2026-03-01T12:00:00Z', occurredAt: '2026-03-01T12:01:00Z' },
    ]);
  });

  it('the worst value of an on-delay that was running is not forgotten', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(28.9);
    tent.clock.advance(10 * SECOND_MS);
    const again = await tent.reopen();
    await again.stay(28.2, MINUTE_MS);
    expect(await again.alarms()).toMatchObject([{ peak: 28.9, peakAt: '2026-03-01T12:00:00Z' }]);
  });

  it('who has acknowledged it is known, and it ends by itself', async () => {
    const tent = await openHotTent();
    await tent.api.post(`/alarms/${tent.hot.id}/acknowledge`);
    const again = await tent.reopen(10 * SECOND_MS);
    expect(await again.alarms()).toMatchObject([{ state: 'acknowledged', acknowledgedBy: 'Test manager' }]);
    await again.stay(26, MINUTE_MS);
    expect(await again.alarms()).toEqual([]);
    expect(await again.alarms('normal')).toMatchObject([{ id: tent.hot.id, acknowledgedBy: 'Test manager' }]);
  });

  it('a shelf is a shelf, and runs out at its time', async () => {
    const tent = await openHotTent();
    await tent.api.post(`/alarms/${tent.hot.id}/shelve`, { minutes: 30, reason: 'the fan is being mended' });
    const again = await tent.reopen(10 * MINUTE_MS);
    expect(await again.alarms()).toMatchObject([{ state: 'shelved', shelvedReason: 'the fan is being mended' }]);
    await again.stay(28.5, 20 * MINUTE_MS - 1);
    expect(await again.alarms('shelved')).toHaveLength(1);
    await again.stay(28.5, 1);
    expect(await again.alarms()).toMatchObject([{ state: 'unacknowledged', shelvedUntil: null, shelvedReason: null }]);
  });

  it('a probe is not silent because the service was away', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(24);
    const again = await tent.reopen(5 * HOUR_MS);
    await again.app.tick();
    expect(await again.alarms()).toEqual([]);
    // So long its buffer may be on its way.
    again.clock.advance(3 * MINUTE_MS - 1);
    await again.app.tick();
    expect(await again.alarms()).toEqual([]);
    again.clock.advance(1);
    await again.app.tick();
    expect((await again.alarms()).map(({ rule }) => rule)).toEqual(['silent-chamber']);
    again.clock.advance(7 * MINUTE_MS + 1);
    await again.app.tick();
    expect((await again.alarms()).map(({ rule }) => rule).sort()).toEqual(['silent-chamber', 'silent-probe']);
  });

  it('the newest reading of a probe is known, and is the climate while it is fresh', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(24, 93);
    const again = await tent.reopen(10 * MINUTE_MS);
    expect((await again.chamber()).climate).toMatchObject({
      temperature: 24,
      humidity: 93,
      at: '2026-03-01T12:00:00Z',
    });
    again.clock.set(TENT_MS + 10 * MINUTE_MS + 1);
    expect((await again.chamber()).climate).toMatchObject({ temperature: null, humidity: null, at: null });
  });

  it('a hold goes on', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent);
    await tent.api.post(`/batches/${batch.id}/hold`, { reason: 'scions limp' });
    const again = await tent.reopen(6 * HOUR_MS);
    expect((await again.chamber()).batch).toMatchObject({ onHold: true, healingDay: 2 });
    const resumed = await again.api.post<{ endsAt: string }>(`/batches/${batch.id}/resume`);
    expect(resumed.body).toMatchObject({ onHold: false });
  });
});
