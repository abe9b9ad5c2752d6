// When checks fall due: from closing, from the start of a stage, again and again, with holds and moves; and where each stands.
import { describe, expect, it } from 'vitest';
import type { BatchTimes } from '../../../shared/healing/batch-clock.ts';
import { checkStatus, type PlannedCheck, plannedChecks } from '../../../shared/healing/checks.ts';
import type { CheckPlan, ProfileDocument } from '../../../shared/healing/profile.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { closedMs, morningProfile, plainProfile, timesOf } from './sample-plan.ts';

const at = (hours: number) => closedMs + hours * HOUR_MS;
const hoursOf = (ms: number) => (ms - closedMs) / HOUR_MS;

function check(id: string, more: Partial<CheckPlan>): CheckPlan {
  return { id, question: 'Is it so?', ifNo: 'Make it so.', overdueMinutes: 60, basis: 'ours', ...more };
}

function due(checks: CheckPlan[], times: Partial<BatchTimes> = {}, asOf = 300, document = plainProfile()) {
  const planned = plannedChecks({ ...document, checks }, timesOf(times), at(asOf));
  return planned.map(({ checkId, dueMs, stage }) => [checkId, hoursOf(dueMs), stage]);
}

describe('a check counted from closing', () => {
  it('is due once at its hour, in the stage of that hour', () => {
    expect(due([check('film-wet', { afterHours: 3 })])).toEqual([['film-wet.1', 3, 'closed']]);
  });

  it('repeats up to and with its last hour', () => {
    expect(due([check('look', { afterHours: 24, everyHours: 24, untilHours: 72 })])).toEqual([
      ['look.1', 24, 'closed'],
      ['look.2', 48, 'closed'],
      ['look.3', 72, 'closed'],
    ]);
  });

  it('repeats to the end of the plan when no last hour is given, the end itself not included', () => {
    const planned = due([check('look', { afterHours: 24, everyHours: 24 })]);
    expect(planned).toHaveLength(7);
    expect(planned.at(-1)).toEqual(['look.7', 168, 'hardening']);
  });

  it('waits for its time of day', () => {
    // Closed at 15:00; 72 h later it is 15:00 again, the next 08:00 comes 17 h after that.
    expect(due([check('gap', { afterHours: 72, notBefore: '08:00' })])).toEqual([['gap.1', 89, 'closed']]);
  });

  it('is one occasion where its time of day brings two together', () => {
    const planned = due([check('look', { afterHours: 10, everyHours: 6, untilHours: 22, notBefore: '08:00' })]);
    // 10 and 16 h after closing both wait for 08:00, 17 h after closing; 22 h for the morning after.
    expect(planned).toEqual([
      ['look.1', 17, 'closed'],
      ['look.3', 41, 'closed'],
    ]);
  });

  it('does not arise before closing', () => {
    expect(due([check('film-wet', { afterHours: 3 })], { openedMs: at(-6), closedMs: null })).toEqual([]);
  });

  it('follows a hold, and keeps its name', () => {
    const holds = [{ fromMs: at(30), toMs: at(40) }];
    expect(due([check('look', { afterHours: 24, everyHours: 24, untilHours: 48 })], { holds })).toEqual([
      ['look.1', 24, 'closed'],
      ['look.2', 58, 'closed'],
    ]);
  });

  it('stays to come while a hold goes on', () => {
    const holds = [{ fromMs: at(30), toMs: null }];
    expect(due([check('look', { afterHours: 48 })], { holds }, 100)).toEqual([['look.1', 118, 'closed']]);
  });

  it('does not arise after the batch was finished', () => {
    const finishedMs = at(50);
    expect(due([check('look', { afterHours: 24, everyHours: 24 })], { finishedMs })).toEqual([
      ['look.1', 24, 'closed'],
      ['look.2', 48, 'closed'],
    ]);
  });
});

describe('a check of a stage', () => {
  it('counts from the beginning of the stage', () => {
    const steps = check('step', { atStage: 'venting', afterHours: 1, everyHours: 12, untilHours: 48 });
    expect(due([steps], {}, 300, morningProfile())).toEqual([
      ['step.1', 113, 'venting'],
      ['step.2', 125, 'venting'],
      ['step.3', 137, 'venting'],
      ['step.4', 149, 'venting'],
    ]);
  });

  it('falls on the beginning of the stage when it has no hours', () => {
    expect(due([check('open', { atStage: 'hardening' })])).toEqual([['open.1', 144, 'hardening']]);
  });

  it('moves with a move', () => {
    const moves = [{ stage: 'venting' as const, atMs: at(80) }];
    expect(due([check('step', { atStage: 'venting', afterHours: 1 })], { moves })).toEqual([['step.1', 81, 'venting']]);
  });

  it('does not arise in a stage that a move skipped, nor after one that it ended', () => {
    const steps = check('step', { atStage: 'venting', afterHours: 1, everyHours: 12 });
    expect(due([steps], { moves: [{ stage: 'hardening', atMs: at(90) }] })).toEqual([]);
    expect(due([steps], { moves: [{ stage: 'hardening', atMs: at(105) }] })).toEqual([['step.1', 97, 'venting']]);
  });

  it('waits out a hold within its stage', () => {
    const holds = [{ fromMs: at(100), toMs: at(106) }];
    const steps = check('step', { atStage: 'venting', afterHours: 1, everyHours: 12, untilHours: 13 });
    expect(due([steps], { holds }).map(([, hours]) => hours)).toEqual([97, 115]);
  });

  it('begins with the stage also when a hold put that off', () => {
    const holds = [{ fromMs: at(90), toMs: at(96.5) }];
    const checks = [check('begin', { atStage: 'venting' }), check('step', { atStage: 'venting', afterHours: 1 })];
    expect(due(checks, { holds })).toEqual([
      ['begin.1', 102.5, 'venting'],
      ['step.1', 103.5, 'venting'],
    ]);
  });

  it('is not due before its stage when a hold began at the very hour of the plan', () => {
    // All through the hold the clock shows the 96 h at which venting begins.
    const holds = [{ fromMs: at(96), toMs: at(112) }];
    expect(due([check('begin', { atStage: 'venting' })], { holds })).toEqual([['begin.1', 112, 'venting']]);
  });

  it('is left out where the profile has no such stage', () => {
    const { stages, ...rest } = plainProfile();
    const document: ProfileDocument = { ...rest, stages: stages.filter(({ stage }) => stage !== 'venting') };
    expect(due([check('step', { atStage: 'venting' })], {}, 300, document)).toEqual([]);
  });
});

describe('a check while loading', () => {
  const list = [check('blade', { atStage: 'loading', afterHours: 0 })];
  const again = [check('blade', { atStage: 'loading', afterHours: 1, everyHours: 2 })];

  it('is due when the batch is opened, before anything is closed', () => {
    expect(due(list, { openedMs: at(-6), closedMs: null })).toEqual([['blade.1', -6, 'loading']]);
  });

  it('repeats up to the first after now while nobody knows when loading ends', () => {
    const hours = due(again, { openedMs: at(-6), closedMs: null }, -2).map(([, hour]) => hour);
    expect(hours).toEqual([-5, -3, -1]);
  });

  it('ends with closing', () => {
    expect(due(again, { openedMs: at(-6) }).map(([, hour]) => hour)).toEqual([-5, -3, -1]);
  });

  it('does not arise when the opening is not known', () => {
    expect(due(list)).toEqual([]);
  });
});

describe('all checks of a batch', () => {
  it('come in order of time, those of one instant in the order of the profile', () => {
    const checks = [
      check('late', { afterHours: 50 }),
      check('daily', { afterHours: 24, everyHours: 24, untilHours: 48 }),
      check('also-48', { afterHours: 48 }),
      check('early', { afterHours: 3 }),
    ];
    expect(due(checks).map(([id]) => id)).toEqual(['early.1', 'daily.1', 'daily.2', 'also-48.1', 'late.1']);
  });

  it('carry question, first help and the time of being overdue', () => {
    const [planned] = plannedChecks(
      { ...plainProfile(), checks: [check('film-wet', { afterHours: 3, overdueMinutes: 45 })] },
      timesOf(),
      closedMs,
    );
    expect(planned).toEqual({
      checkId: 'film-wet.1',
      id: 'film-wet',
      question: 'Is it so?',
      ifNo: 'Make it so.',
      dueMs: at(3),
      overdueMs: at(3) + 45 * MINUTE_MS,
      stage: 'closed',
    });
  });

  it('stay countable when a profile asks for one every few seconds', () => {
    const planned = due([check('mad', { afterHours: 0, everyHours: 0.001 })]);
    // Every quarter of an hour of 192 h.
    expect(planned).toHaveLength(768);
  });
});

describe('the status of a check', () => {
  const planned: PlannedCheck = {
    checkId: 'film-wet.1',
    id: 'film-wet',
    question: 'Is the film wet?',
    ifNo: 'Wet it.',
    dueMs: 1000,
    overdueMs: 2000,
    stage: 'closed',
  };
  const rows = [
    { why: 'is to come just before it is due', answer: null, nowMs: 999, status: 'to-come' },
    { why: 'is due at its instant', answer: null, nowMs: 1000, status: 'due' },
    { why: 'is due to the last moment', answer: null, nowMs: 1999, status: 'due' },
    { why: 'is overdue from then on', answer: null, nowMs: 2000, status: 'overdue' },
    { why: 'is answered whatever the hour', answer: { answer: 'no' }, nowMs: 5000, status: 'answered' },
    { why: 'may be answered before it is due', answer: { answer: 'yes' }, nowMs: 0, status: 'answered' },
  ];
  it.each(rows)('$why', ({ answer, nowMs, status }) => {
    expect(checkStatus(planned, answer, nowMs)).toBe(status);
  });
});
