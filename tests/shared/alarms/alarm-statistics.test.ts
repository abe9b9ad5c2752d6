// Alarms of a stretch of time against the targets of IEC 62682.
import { describe, expect, it } from 'vitest';
import { type AlarmStep, alarmStatistics, alarmTargets } from '../../../shared/alarms/alarm-statistics.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';

const FROM_MS = Date.UTC(2026, 2, 2);
const day = { fromMs: FROM_MS, toMs: FROM_MS + DAY_MS, zone: 'UTC' };
let made = 0;

function step(atMs: number, change: Partial<AlarmStep> = {}): AlarmStep {
  made += 1;
  return {
    ...{ alarmId: `a${made}`, chamberId: 'tent-1', rule: 'dry', subjectId: null, atMs: FROM_MS + atMs },
    ...{ change: 'occurred', toState: 'unacknowledged', priority: 'low' },
    ...change,
  };
}
const every = (count: number, everyMs: number) => Array.from({ length: count }, (_, index) => step(index * everyMs));

describe('how many', () => {
  it('is counted in the stretch, its beginning included and its end not', () => {
    const steps = [step(-1), step(0), step(DAY_MS - 1), step(DAY_MS)];
    expect(alarmStatistics(steps, day)).toMatchObject({ alarms: 2, hours: 24, perHour: 2 / 24 });
  });

  it('counts what came again, not what returned or came back while it was set aside', () => {
    const again = step(0, { change: 'occurred-again' });
    const returned = step(1, { change: 'returned', toState: 'normal' });
    const shelved = step(2, { change: 'occurred-again', toState: 'shelved' });
    expect(alarmStatistics([again, returned, shelved], day).alarms).toBe(1);
  });

  it('says the busiest hour', () => {
    expect(alarmStatistics([...every(7, 9 * MINUTE_MS), step(2 * HOUR_MS)], day).busiestHour).toBe(7);
    expect(alarmStatistics(every(7, 10 * MINUTE_MS), day).busiestHour).toBe(6);
  });

  it('without any, has no shares and every figure at nothing', () => {
    expect(alarmStatistics([], day)).toMatchObject({
      ...{ alarms: 0, perHour: 0, busiestHour: 0, shares: null, floods: 0, floodShare: 0 },
      ...{ chattering: [], mostFrequent: [] },
    });
  });
});

it('shares of the priorities are of all alarms', () => {
  const steps = (['low', 'low', 'medium', 'critical'] as const).map((priority) => step(0, { priority }));
  expect(alarmStatistics(steps, day).shares).toEqual({ low: 0.5, medium: 0.25, high: 0, critical: 0.25 });
});

it('days are the days of the site, the first and last cut, also where one has 23 hours', () => {
  const zone = 'Europe/Berlin';
  const fromMs = Date.parse('2026-03-28T23:00:00Z');
  const toMs = Date.parse('2026-03-30T10:00:00Z');
  const late = step(Date.parse('2026-03-29T21:30:00Z') - FROM_MS);
  const next = step(Date.parse('2026-03-29T22:00:00Z') - FROM_MS, { priority: 'high' });
  const { days } = alarmStatistics([late, next], { fromMs, toMs, zone });
  expect(days.map(({ date, alarms, byPriority }) => [date, alarms, byPriority.high])).toEqual([
    ['2026-03-29', 1, 0],
    ['2026-03-30', 1, 1],
  ]);
});

describe('chattering', () => {
  it.each([
    { times: [0, 20, 40], chatters: true, why: 'three times within a minute' },
    { times: [0, 30, 60], chatters: false, why: 'the third comes when the first is a minute old' },
    { times: [0, 59], chatters: false, why: 'twice' },
  ])('$why', ({ times, chatters }) => {
    const steps = times.map((second) => step(second * SECOND_MS));
    expect(alarmStatistics(steps, day).chattering).toHaveLength(chatters ? 1 : 0);
  });

  it('is of one alarm: different rules, chambers or probes do not make one chatter', () => {
    const steps = [step(0), step(1, { rule: 'wet' }), step(2, { chamberId: 'tent-2' }), step(3, { subjectId: 'p1' })];
    expect(alarmStatistics(steps, day).chattering).toEqual([]);
  });
});

describe('stale', () => {
  const begun = { alarmId: 'old' };
  const over = (atMs: number) => step(atMs, { ...begun, change: 'returned', toState: 'normal' });
  it.each([
    { steps: [step(-DAY_MS, begun)], stale: 1, why: 'it has stood for more than a day when this one ends' },
    { steps: [step(0, begun)], stale: 0, why: 'it is a day old only when this day is over' },
    { steps: [step(-DAY_MS, begun), over(0)], stale: 0, why: 'it was over before it was a day and a moment old' },
    { steps: [step(-2 * DAY_MS, begun), over(HOUR_MS)], stale: 1, why: 'it stood into this day' },
    { steps: [step(-2 * DAY_MS, begun), over(-HOUR_MS)], stale: 0, why: 'it was over before this day' },
  ])('$stale: $why', ({ steps, stale }) => {
    expect(alarmStatistics(steps, day).days[0]?.stale).toBe(stale);
  });
});

it('the share of time in flood is from the eleventh alarm to the calm', () => {
  const figures = alarmStatistics(every(11, SECOND_MS), day);
  expect(figures.floods).toBe(1);
  expect(figures.floodShare * DAY_MS).toBeCloseTo(10 * MINUTE_MS - 4 * SECOND_MS, 3);
});

it('the busiest sources come first, at most ten', () => {
  const many = Array.from({ length: 11 }, (_, index) => step(index * HOUR_MS, { chamberId: `tent-${index}` }));
  const { mostFrequent } = alarmStatistics([...many, step(0, { chamberId: 'tent-7' })], day);
  expect(mostFrequent).toHaveLength(10);
  expect(mostFrequent[0]).toEqual({ chamberId: 'tent-7', rule: 'dry', subjectId: null, alarms: 2 });
});

it('targets are those of IEC 62682: 6 an hour, at most 12, 80/15/5 %, fewer than 5 stale on any day, none chattering', () => {
  expect(alarmTargets).toEqual({
    ...{ perHourAcceptable: 6, perHourMost: 12, staleFewerThan: 5, chatteringMost: 0 },
    priorityShares: { low: 0.8, medium: 0.15, high: 0.05 },
  });
});
