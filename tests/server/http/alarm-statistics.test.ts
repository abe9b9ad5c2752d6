// The statistics of alarms over HTTP: of the stretch asked for, from what is stored, beside the targets.
import { describe, expect, it } from 'vitest';
import type { AlarmStatisticsView } from '../../../shared/api/alarm-statistics.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../../shared/units.ts';
import { openHotTent, openTent, TENT_MS } from '../../support/open-tent.ts';

describe('statistics', () => {
  it('count the alarms of the last thirty days', async () => {
    const tent = await openHotTent();
    await tent.app.store.chambers.add({ id: 'older', name: 'Older', createdMs: TENT_MS - 40 * DAY_MS });
    await tent.api.post(`/alarms/${tent.hot.id}/acknowledge`);
    tent.clock.advance(10 * SECOND_MS);
    await tent.stay(26, MINUTE_MS);
    tent.clock.advance(10 * SECOND_MS);
    await tent.stay(28.5, MINUTE_MS);
    tent.clock.advance(SECOND_MS);
    const { status, body } = await tent.api.get<AlarmStatisticsView>('/alarms/statistics');
    expect(status).toBe(200);
    expect(body).toMatchObject({
      ...{ alarms: 2, hours: 720, busiestHour: 2, floods: 0, floodShare: 0, chattering: [] },
      shares: { critical: 0, high: 1, medium: 0, low: 0 },
      mostFrequent: [{ chamberId: tent.chamberId, rule: 'heat', subjectId: null, alarms: 2 }],
      targets: { perHourAcceptable: 6, perHourMost: 12 },
    });
    expect(body.days).toHaveLength(31);
    expect(body.days.at(-1)).toMatchObject({ date: '2026-03-01', alarms: 2, stale: 0 });
  });

  it('are of the stretch that is asked for', async () => {
    const tent = await openHotTent();
    const fromMs = TENT_MS + 2 * MINUTE_MS;
    const after = `from=${utcText(fromMs)}&to=${utcText(fromMs + HOUR_MS)}`;
    const { body } = await tent.api.get<AlarmStatisticsView>(`/alarms/statistics?${after}`);
    expect(body).toMatchObject({ alarms: 0, hours: 1, shares: null, from: utcText(fromMs) });
  });

  it('divide by the time there was anything to watch, not by days before the first chamber', async () => {
    const tent = await openHotTent();
    tent.clock.set(TENT_MS + 6 * HOUR_MS);
    const { body } = await tent.api.get<AlarmStatisticsView>('/alarms/statistics');
    expect(body).toMatchObject({ alarms: 1, hours: 6, perHour: 1 / 6, from: utcText(TENT_MS) });
    expect(body.days.map(({ date }) => date)).toEqual(['2026-03-01']);
  });

  it('of a time before the first chamber are all nothing', async () => {
    const tent = await openHotTent();
    const before = `from=${utcText(TENT_MS - 2 * HOUR_MS)}&to=${utcText(TENT_MS - HOUR_MS)}`;
    const { body } = await tent.api.get<AlarmStatisticsView>(`/alarms/statistics?${before}`);
    expect(body).toMatchObject({ alarms: 0, hours: 0, perHour: 0, floodShare: 0, shares: null, days: [] });
  });

  it('find an alarm that has stood for more than a day though nothing happened since', async () => {
    const tent = await openHotTent();
    const hours = (count: number) => utcText(TENT_MS + count * HOUR_MS);
    const { body } = await tent.api.get<AlarmStatisticsView>(`/alarms/statistics?from=${hours(48)}&to=${hours(50)}`);
    expect(body.days).toMatchObject([{ alarms: 0, stale: 1 }]);
  });

  it.each([
    { query: 'from=2026-03-02T00:00:00Z&to=2026-03-02T00:00:00Z', why: 'nothing lies between' },
    { query: 'from=2024-01-01T00:00:00Z&to=2026-03-02T00:00:00Z', why: 'more than 400 days' },
    { query: 'from=yesterday', why: 'no time' },
  ])('are refused: $why', async ({ query }) => {
    const { api } = await openTent();
    expect((await api.get(`/alarms/statistics?${query}`)).status).toBe(400);
  });
});
