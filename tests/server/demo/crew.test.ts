// What the invented crew does: fog with a dead band, the stairs of venting, and the heat that is let in and driven out.
import { describe, expect, it } from 'vitest';
import {
  type CrewAct,
  decideCrewAct,
  LOOK_BEFORE_VENTING_MS,
  planCrew,
  type Scenario,
} from '../../../server/demo/crew.ts';
import { ventingGapAt, ventingGaps } from '../../../server/demo/venting-gaps.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

const zone = 'Europe/Amsterdam';
const closedMs = Date.parse('2026-04-06T15:00:00+02:00');
const plan = planCrew(closedMs, zone);
const steady: Scenario = { kind: 'steady' };

const actAt = (timeMs: number, view: { humidity?: number; temperature?: number } = {}, before: CrewAct | null = null) =>
  decideCrewAct(plan, steady, { timeMs, humidity: 96, temperature: 23, ...view }, before);

describe('planCrew', () => {
  it('begins venting at the first 07:00 after four full days and hardening two days later', () => {
    expect(new Date(plan.ventingMs).toISOString()).toBe('2026-04-11T05:00:00.000Z');
    expect(plan.hardeningMs - plan.ventingMs).toBe(48 * HOUR_MS);
  });
});

describe('the gap', () => {
  it.each([
    { hours: -30, gap: 0, why: 'closed' },
    { hours: -0.001, gap: 0, why: 'closed to the last minute' },
    { hours: 0, gap: 18, why: 'the first step on the morning of the fifth day' },
    { hours: 4.99, gap: 18, why: 'until the next step' },
    { hours: 5, gap: 20, why: 'at noon' },
    { hours: 47.99, gap: 50, why: 'the last step' },
    { hours: 48, gap: 100, why: 'fully open' },
    { hours: 200, gap: 100, why: 'and stays open' },
  ])('is $gap % $hours h into venting: $why', ({ hours, gap }) => {
    expect(ventingGapAt(plan.ventingMs + hours * HOUR_MS, plan.ventingMs)).toBe(gap);
    expect(actAt(plan.ventingMs + hours * HOUR_MS).gapPercent).toBe(gap);
  });

  it('only ever opens further on the stairs', () => {
    const gaps = ventingGaps.map((step) => step.gapPercent);
    expect(gaps).toEqual([...new Set(gaps)].sort((a, b) => a - b));
  });

  it('is opened a little for a quarter of an hour on the day before venting', () => {
    const lookMs = plan.ventingMs - LOOK_BEFORE_VENTING_MS;
    expect([-1, 0, 14, 15].map((minutes) => actAt(lookMs + minutes * MINUTE_MS).gapPercent)).toEqual([0, 10, 10, 0]);
  });

  it('stands open while the tent is loaded', () => {
    expect(actAt(closedMs - 1).gapPercent).toBe(30);
    expect(actAt(closedMs).gapPercent).toBe(0);
  });
});

describe('the fogger', () => {
  const dayTwoMs = closedMs + 30 * HOUR_MS;
  it.each([
    { humidity: 95.4, wasOn: false, on: true, why: 'too dry' },
    { humidity: 95.5, wasOn: false, on: false, why: 'not yet too dry' },
    { humidity: 97.4, wasOn: true, on: true, why: 'runs on through the dead band' },
    { humidity: 97.5, wasOn: true, on: false, why: 'wet enough' },
    { humidity: 96.5, wasOn: false, on: false, why: 'stays off in the dead band' },
  ])('is $on at $humidity %RH after $wasOn: $why', ({ humidity, wasOn, on }) => {
    const before = { ...actAt(dayTwoMs), foggerOn: wasOn };
    expect(actAt(dayTwoMs, { humidity }, before).foggerOn).toBe(on);
  });

  it('is off for good from half a day before venting', () => {
    expect(actAt(plan.ventingMs - 12 * HOUR_MS - 1, { humidity: 80 }).foggerOn).toBe(true);
    expect(actAt(plan.ventingMs - 12 * HOUR_MS, { humidity: 80 }).foggerOn).toBe(false);
  });
});

describe('the bottom heat', () => {
  it.each([
    { temperature: 24, watts: 0, why: 'warm enough' },
    { temperature: 22, watts: 0, why: 'at the set point' },
    { temperature: 21, watts: 75, why: 'half of its band' },
    { temperature: 15, watts: 150, why: 'no more than it has' },
  ])('gives $watts W/m² at $temperature °C: $why', ({ temperature, watts }) => {
    expect(actAt(closedMs, { temperature }).benchHeatWm2).toBe(watts);
  });
});

describe('the overheating scenario', () => {
  const fromMs = closedMs + 45 * HOUR_MS;
  const rescueMs = fromMs + 10 * MINUTE_MS;
  const view = { humidity: 80, temperature: 24 };
  const actDuring = (timeMs: number, rescue: number | null = rescueMs): CrewAct =>
    decideCrewAct(plan, { kind: 'overheat', fromMs, rescueMs: rescue }, { timeMs, ...view }, null);

  it.each([
    { timeMs: fromMs - 1, shade: 0.8, foggerOn: true, gapPercent: 0, why: 'as usual before' },
    { timeMs: fromMs, shade: 0, foggerOn: false, gapPercent: 0, why: 'shade left open, fogger still' },
    { timeMs: rescueMs - 1, shade: 0, foggerOn: false, gapPercent: 0, why: 'until somebody comes' },
    { timeMs: rescueMs, shade: 0.85, foggerOn: true, gapPercent: 35, why: 'shaded and opened' },
    { timeMs: rescueMs + 40 * MINUTE_MS, shade: 0.8, foggerOn: true, gapPercent: 0, why: 'as usual afterwards' },
  ])('$why', ({ timeMs, shade, foggerOn, gapPercent }) => {
    expect(actDuring(timeMs)).toMatchObject({ shade, foggerOn, gapPercent });
  });

  it('goes on as long as nobody comes', () => {
    expect(actDuring(fromMs + 5 * HOUR_MS, null).shade).toBe(0);
  });
});
