// Checks that nobody has done in time, and checks and sights that are bad.
import { describe, expect, it } from 'vitest';
import { checkFailed } from '../../../../shared/alarms/rules/check-failed.ts';
import { checkOverdue } from '../../../../shared/alarms/rules/check-overdue.ts';
import type { SceneCare, SceneCheck, SceneReport } from '../../../../shared/alarms/rules/scene-care.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';
import { NOON_MS, sceneAt } from '../scenes.ts';

/** A check due `minute` minutes after noon, overdue an hour later. */
function check(id: string, minute: number, change: Partial<SceneCheck> = {}): SceneCheck {
  const dueMs = NOON_MS + minute * MINUTE_MS;
  const words = { question: `Is ${id} right?`, ifNo: `Put ${id} right.` };
  return {
    checkId: `${id}.1`,
    id,
    ...words,
    dueMs,
    overdueMs: dueMs + HOUR_MS,
    stage: 'closed',
    answer: null,
    ...change,
  };
}
const answered = (answer: 'yes' | 'no', minute: number) => ({
  answer: { answer, atMs: NOON_MS + minute * MINUTE_MS },
});
const report = (kind: SceneReport['kind'], minute: number): SceneReport => ({
  kind,
  atMs: NOON_MS + minute * MINUTE_MS,
});

function careOf(change: Partial<SceneCare>): SceneCare {
  return {
    ...{ knownSinceMs: 0, checks: [], reports: [], vpd: null, ventingSinceMs: null, isGapOpen: false },
    ...change,
  };
}
const calm = () => 0 as const;
const late = (checks: SceneCheck[], minute: number, change: Partial<SceneCare> = {}) =>
  checkOverdue.judge(sceneAt(minute * MINUTE_MS, { care: careOf({ checks, ...change }) }), calm);
const bad = (checks: SceneCheck[], reports: SceneReport[], minute = 600) =>
  checkFailed
    .judge(sceneAt(minute * MINUTE_MS, { care: careOf({ checks, reports }) }), calm)
    .map(({ about, level, sinceMs }) => [about?.id, level, ((sinceMs ?? 0) - NOON_MS) / MINUTE_MS]);

describe('a check that nobody has answered', () => {
  it.each([
    { minute: 59.9, alarms: 0, why: 'it may still be done in time' },
    { minute: 60, alarms: 1, why: 'the minutes that the profile allows are over' },
    { minute: 60 + 12 * 60 - 0.1, alarms: 1, why: 'it can still be made up for' },
    { minute: 60 + 12 * 60, alarms: 0, why: 'it is missed, and left to the record' },
  ])('$minute minutes after it was due raises $alarms: $why', ({ minute, alarms }) => {
    expect(late([check('film', 0)], minute)).toHaveLength(alarms);
  });

  it('says which, since when, and is one level', () => {
    const [judgement] = late([check('film', 0)], 90);
    expect(judgement).toMatchObject({ level: 1, about: { id: 'film', question: 'Is film right?' } });
    expect(judgement?.sinceMs).toBe(NOON_MS + HOUR_MS);
  });

  it.each([
    { checks: [check('film', 0, answered('yes', 20))], why: 'it was answered' },
    { checks: [check('film', 0, answered('no', 20))], why: 'a no is an answer too' },
    { checks: [check('film', 0), check('film', 61)], why: 'the next of its kind is due: that is the one to do' },
  ])('raises nothing: $why', ({ checks }) => {
    expect(late(checks, 70)).toEqual([]);
  });

  it.each([
    { knownSinceMs: NOON_MS + HOUR_MS, alarms: 0, why: 'it was overdue when the batch was entered' },
    { knownSinceMs: NOON_MS + HOUR_MS - 1, alarms: 1, why: 'it became overdue afterwards' },
  ])('$why', ({ knownSinceMs, alarms }) => {
    expect(late([check('film', 0)], 90, { knownSinceMs })).toHaveLength(alarms);
  });

  it('is one alarm with those that fell due with it, and keeps its name when one of them is answered', () => {
    const three = [check('air', 0), check('blade', 0), check('sun', 0)];
    expect(late(three, 90)).toMatchObject([{ about: { id: 'air', question: 'Is air right?', more: 2 } }]);
    const [, ...rest] = three;
    const left = [check('air', 0, answered('yes', 80)), ...rest];
    expect(late(left, 90)).toMatchObject([{ about: { id: 'air', question: 'Is blade right?', more: 1 } }]);
  });

  it('is another alarm where it fell due at another time', () => {
    expect(late([check('air', 0), check('blade', 5)], 90).map(({ about }) => about?.id)).toEqual(['air', 'blade']);
  });
});

describe('a check that was answered', () => {
  it.each([
    { answer: 'yes', alarms: [], why: 'all is well' },
    { answer: 'no', alarms: [['feed', 1, 20]], why: 'it is bad from the answer on' },
  ] as const)('$answer: $why', ({ answer, alarms }) => {
    expect(bad([check('feed', 0, answered(answer, 20))], [])).toEqual(alarms);
  });

  it('no is over with a later yes of the same check, and begins with the first no of a row', () => {
    const first = check('feed', 0, answered('no', 20));
    const second = check('feed', 100, answered('no', 120));
    expect(bad([first, second], [])).toEqual([['feed', 1, 20]]);
    expect(bad([first, second, check('feed', 200, answered('yes', 220))], [])).toEqual([]);
    expect(bad([check('feed', 0, answered('yes', 20)), second], [])).toEqual([['feed', 1, 120]]);
  });

  it('says what the plan says to do', () => {
    const checks = [check('feed', 0, answered('no', 20))];
    const [judgement] = checkFailed.judge(sceneAt(HOUR_MS, { care: careOf({ checks }) }), calm);
    expect(judgement?.about).toEqual({ id: 'feed', question: 'Is feed right?', ifNo: 'Put feed right.' });
  });
});

describe('scions', () => {
  const stand = check('stand', 0, { sameAs: 'erect' });
  it.each([
    { checks: [stand], reports: [report('limp', 30)], alarms: [['erect', 2, 30]], why: 'limp when they must stand' },
    { checks: [stand], reports: [report('limp', -30)], alarms: [], why: 'slightly limp before the plan first asks' },
    { checks: [], reports: [report('limp', -30)], alarms: [['erect', 2, -30]], why: 'limp in a plan that never asks' },
    { checks: [stand], reports: [report('limp', 30), report('erect', 60)], alarms: [], why: 'seen erect again' },
    {
      checks: [stand],
      reports: [report('limp', 30), report('mist', 60)],
      alarms: [['erect', 2, 30]],
      why: 'misted, not yet seen erect',
    },
    {
      checks: [check('stand', 0, { sameAs: 'erect', ...answered('no', 10) })],
      reports: [report('erect', 60)],
      alarms: [],
      why: 'a no, then logged erect',
    },
    {
      checks: [check('stand', 0, { sameAs: 'erect', ...answered('yes', 60) })],
      reports: [report('limp', 30)],
      alarms: [],
      why: 'limp, then answered yes',
    },
    {
      checks: [check('stand', 0, { sameAs: 'erect', ...answered('no', 10) })],
      reports: [],
      alarms: [['erect', 2, 10]],
      why: 'answered no',
    },
  ])('$why', ({ checks, reports, alarms }) => {
    expect(bad(checks, reports)).toEqual(alarms);
  });

  it('that stand in another check of the same are the same', () => {
    const gone = check('stand', 0, { sameAs: 'erect', ...answered('no', 10) });
    const other = check('after-step', 60, { sameAs: 'erect', ...answered('yes', 70) });
    expect(bad([gone, other], [])).toEqual([]);
  });
});

describe('the film', () => {
  it.each([
    { reports: [report('film-dry', 30)], alarms: [['film-wet', 1, 30]], why: 'dry' },
    { reports: [report('film-dry', 30), report('film-wet', 60)], alarms: [], why: 'seen wet again' },
    { reports: [report('film-dry', 30), report('mist', 60)], alarms: [], why: 'wetted since' },
    {
      reports: [report('mist', 10), report('film-dry', 30)],
      alarms: [['film-wet', 1, 30]],
      why: 'dry in spite of mist',
    },
  ])('$why', ({ reports, alarms }) => {
    expect(bad([], reports)).toEqual(alarms);
  });
});

it('a chamber of which nothing is known has no bad check and none overdue', () => {
  expect([...checkFailed.judge(sceneAt(0), calm), ...checkOverdue.judge(sceneAt(0), calm)]).toEqual([]);
});
