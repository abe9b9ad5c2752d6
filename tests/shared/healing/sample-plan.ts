// A plain profile and plain batch times for the tests of healing: each test changes only what it is about.
import type { BatchTimes } from '../../../shared/healing/batch-clock.ts';
import type { Limit, LimitSet, ProfileDocument, StagePlan } from '../../../shared/healing/profile.ts';

/** Monday 2 March 2026, 15:00 UTC: no shift of time falls into the healing that follows. */
export const closedMs = Date.parse('2026-03-02T15:00:00Z');

export function constant(value: number): Limit {
  return { shape: 'constant', value, basis: 'ours' };
}

const wide: LimitSet = { low: constant(0), high: constant(50) };
const humid: LimitSet = { low: constant(10), high: constant(100) };

/** A stage with limits that say nothing. */
export function plainStage(stage: StagePlan['stage'], afterHours: number, more: Partial<StagePlan> = {}): StagePlan {
  return { stage, afterHours, temperature: wide, humidity: humid, ...more };
}

/** Loading, closed, venting from 96 h, hardening from 144 h, end at 192 h; no times of day. */
export function plainProfile(more: Partial<ProfileDocument> = {}): ProfileDocument {
  return {
    name: 'Plain',
    crop: 'Any',
    note: '',
    grace: { temperaturePerHour: 1, humidityPerHour: 5, basis: 'ours' },
    silenceMinutes: 15,
    stages: [
      plainStage('loading', 0),
      plainStage('closed', 0),
      plainStage('venting', 96),
      plainStage('hardening', 144),
    ],
    endsAfterHours: 192,
    checks: [],
    ...more,
  };
}

/** The plain profile with every later stage and the end in the morning at 07:00. */
export function morningProfile(): ProfileDocument {
  const { stages, ...rest } = plainProfile();
  const atSeven = (plan: StagePlan): StagePlan => (plan.afterHours > 0 ? { ...plan, notBefore: '07:00' } : plan);
  return { ...rest, stages: stages.map(atSeven), endsNotBefore: '07:00' };
}

export function timesOf(more: Partial<BatchTimes> = {}): BatchTimes {
  return { openedMs: null, closedMs, finishedMs: null, zone: 'UTC', holds: [], moves: [], ...more };
}
