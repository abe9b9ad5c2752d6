import { describe, expect, test } from 'vitest';
import { planStages } from '../../../shared/healing/batch-clock.ts';
import { makeCorridor } from '../../../shared/healing/corridor.ts';
import { findStandardProfile } from '../../../shared/healing/standard-profiles.ts';
import { DAY_MS, HOUR_MS } from '../../../shared/units.ts';
import { findStep, type HumidityBandAt } from '../../../shared/venting/find-step.ts';

/** Low limits 90, 80, 70 of six hours each; the high ones, 100, 90, 80, follow at 5 %RH an hour. */
const stairs: HumidityBandAt = (ms) => {
  const hours = ms / HOUR_MS;
  if (hours < 0 || hours >= 18) return null;
  const step = Math.floor(hours / 6);
  const high = Math.max(100 - 10 * step, step === 0 ? 100 : 110 - 10 * step - 5 * (hours - 6 * step));
  return { low: 90 - 10 * step, high };
};

describe('the step to go to', () => {
  test.each([
    {
      hours: 1,
      humidity: 97,
      step: { fromHours: 6, low: 80, high: 90 },
      why: 'inside the first step: the next, from its time on',
    },
    {
      hours: 6.5,
      humidity: 97,
      step: { fromHours: 6.5, low: 80, high: 90 },
      why: 'the step in force, not reached yet',
    },
    { hours: 6.5, humidity: 90, step: { fromHours: 12, low: 70, high: 80 }, why: 'reached, its high limit included' },
    { hours: 6.5, humidity: 90.1, step: { fromHours: 6.5, low: 80, high: 90 }, why: 'just not reached' },
    { hours: 13, humidity: 85, step: { fromHours: 13, low: 70, high: 80 }, why: 'the last step in force' },
  ])('after $hours h with $humidity %RH: $why', ({ hours, humidity, step: { fromHours, low, high } }) => {
    const found = findStep(stairs, humidity, hours * HOUR_MS, 18 * HOUR_MS);
    expect(found?.low).toBe(low);
    expect(found?.high).toBeCloseTo(high, 6);
    expect((found?.fromMs ?? 0) / HOUR_MS).toBeCloseTo(fromHours, 6);
  });

  test.each([
    { hours: 13, humidity: 75, until: 18, why: 'the last step is reached' },
    { hours: 1, humidity: 97, until: 4, why: 'the next lies beyond the time that is asked for' },
    { hours: -1, humidity: 97, until: 18, why: 'no band holds' },
    { hours: 18, humidity: 60, until: 30, why: 'the plan is over' },
  ])('there is none: $why', ({ hours, humidity, until }) => {
    expect(findStep(stairs, humidity, hours * HOUR_MS, until * HOUR_MS)).toBeNull();
  });

  test('a ramp is taken a per cent at a time', () => {
    const ramp: HumidityBandAt = (ms) => ({ low: 90 - ms / HOUR_MS, high: 100 - ms / HOUR_MS });
    const found = findStep(ramp, 95, 0, 48 * HOUR_MS);
    expect(found?.low).toBeCloseTo(89, 0);
    expect(found?.fromMs).toBeCloseTo(HOUR_MS, -6);
  });

  test('on the day before venting of the tomato profile it is the first of the four stairs, from 07:00 on', () => {
    const document = findStandardProfile('tomato-common-practice')?.document;
    if (document === undefined) throw new Error('the profile is shipped');
    const closedMs = Date.parse('2026-03-02T15:00:00Z');
    const times = { openedMs: null, closedMs, finishedMs: null, zone: 'UTC', holds: [], moves: [] };
    const corridor = makeCorridor(document, planStages(document, times, closedMs), { temperature: 20, humidity: 65 });
    const nowMs = closedMs + 3 * DAY_MS;
    const found = findStep((ms) => corridor(ms)?.humidity ?? null, 97, nowMs, nowMs + 2 * DAY_MS);
    const fromMs = Date.parse('2026-03-07T07:00:00Z');
    expect(found?.fromMs).toBe(fromMs);
    // Stairs of four from 90 to 55 and from 100 to 80: a quarter of the way each.
    expect(found?.low).toBeCloseTo(90 - 35 / 4, 6);
    expect(found?.high).toBeCloseTo(100 - 20 / 4, 6);
  });
});
