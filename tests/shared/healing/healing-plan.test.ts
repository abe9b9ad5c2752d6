// A profile laid out in time: the shape that `takewell plan --json` prints.
import { describe, expect, it } from 'vitest';
import { describePlan } from '../../../shared/healing/healing-plan.ts';
import { findStandardProfile } from '../../../shared/healing/standard-profiles.ts';
import { closedMs, constant, plainProfile, plainStage } from './sample-plan.ts';

describe('the plan of a batch', () => {
  const basis = 'ours';
  const document = plainProfile({
    stages: [
      plainStage('closed', 0, {
        temperature: { low: constant(20), high: constant(28), highHigh: constant(29) },
        humidity: { low: constant(90), high: constant(100) },
      }),
      plainStage('venting', 4, {
        humidity: { low: { shape: 'ramp', from: 90, to: 61, basis }, high: constant(100) },
      }),
    ],
    endsAfterHours: 7,
    checks: [
      { id: 'film-wet', question: 'Wet?', ifNo: 'Wet it.', afterHours: 3, overdueMinutes: 60, basis },
      { id: 'look', question: 'Erect?', ifNo: 'Hold.', afterHours: 2, everyHours: 3, overdueMinutes: 60, basis },
    ],
  });
  const plan = describePlan(document, { closedMs, zone: 'UTC' });

  it('has the stages with their instants in UTC', () => {
    expect(plan.stages).toEqual([
      { stage: 'closed', startsAt: '2026-03-02T15:00:00Z', endsAt: '2026-03-02T19:00:00Z' },
      { stage: 'venting', startsAt: '2026-03-02T19:00:00Z', endsAt: '2026-03-02T22:00:00Z' },
    ]);
  });

  it('has a row for each time a check is due', () => {
    expect(plan.checks).toEqual([
      { check: 'look', dueAt: '2026-03-02T17:00:00Z' },
      { check: 'film-wet', dueAt: '2026-03-02T18:00:00Z' },
      { check: 'look', dueAt: '2026-03-02T20:00:00Z' },
    ]);
  });

  it('has limits from closing on, one row an hour, up to the end', () => {
    expect(plan.limits).toHaveLength(7);
    expect(plan.limits[0]).toEqual({
      at: '2026-03-02T15:00:00Z',
      temperature: { low: 20, high: 28, highHigh: 29 },
      humidity: { low: 90, high: 100 },
    });
    expect(plan.limits.at(-1)?.at).toBe('2026-03-02T21:00:00Z');
  });

  it('writes limits without the dust of fractions, and null for a limit that is not set', () => {
    expect(plan.limits.map(({ humidity }) => humidity.low)).toEqual([90, 90, 90, 90, 90, 80.33, 70.67]);
    expect(plan.limits.at(-1)?.temperature.highHigh).toBeNull();
  });

  it('is, for the common practice, hourly over the whole healing and across a shift of time', () => {
    const tomato = findStandardProfile('tomato-common-practice')?.document ?? document;
    const spring = describePlan(tomato, { closedMs: Date.parse('2026-03-25T15:00:00Z'), zone: 'Europe/Amsterdam' });
    expect(spring.stages.map(({ startsAt }) => startsAt)).toEqual([
      '2026-03-25T15:00:00Z',
      '2026-03-30T05:00:00Z',
      '2026-04-01T05:00:00Z',
    ]);
    expect(spring.stages.at(-1)?.endsAt).toBe('2026-04-03T05:00:00Z');
    expect(spring.limits).toHaveLength(206);
    const instants = spring.limits.map(({ at }) => Date.parse(at));
    expect(new Set(instants.slice(1).map((ms, i) => ms - (instants[i] ?? 0)))).toEqual(new Set([3_600_000]));
  });
});
