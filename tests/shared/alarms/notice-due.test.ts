// Who is told of a change, and why somebody is not.
import { describe, expect, it } from 'vitest';
import type { Alarm } from '../../../shared/alarms/alarm.ts';
import { countsForFlood, floodNotices, noticesDue } from '../../../shared/alarms/notice-due.ts';
import type { AlarmChange } from '../../../shared/alarms/watch-state.ts';
import type { Target } from '../../../shared/telling/notice.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { type AlarmChanged, runHotWatch } from './run-watch.ts';
import { NOON_MS } from './scenes.ts';

const phone: Target = { channel: 'web-push', targetId: 'phone-1', personId: 'p1' };
const other: Target = { channel: 'web-push', targetId: 'phone-2', personId: 'p2' };
const hook: Target = { channel: 'webhook', targetId: 'webhook', personId: null };
const { hot } = runHotWatch();
const AT_MS = NOON_MS + 5 * MINUTE_MS;

function decide(
  change: AlarmChange,
  alarm: Partial<Alarm> = {},
  targets: readonly Target[] = [phone, hook],
  toldBefore: readonly string[] = ['phone-1', 'webhook'],
  isFlood = false,
) {
  const effect: AlarmChanged = {
    type: 'alarm-changed',
    change,
    atMs: AT_MS,
    from: 'normal',
    alarm: { ...hot, ...alarm },
    person: null,
    note: '',
  };
  return noticesDue(effect, targets, new Set(toldBefore), isFlood);
}

describe('a change that is told', () => {
  it.each([
    { change: 'occurred', kind: 'raised' },
    { change: 'occurred-again', kind: 'raised' },
    { change: 'unshelved', kind: 'raised' },
    { change: 'unsuppressed', kind: 'raised' },
    { change: 'returned-to-service', kind: 'raised' },
    { change: 'escalated', kind: 'escalated' },
    { change: 'returned', kind: 'returned' },
  ] as const)('$change is told to each target as $kind', ({ change, kind }) => {
    const { notices, reason } = decide(change);
    expect(reason).toBe(`${kind}, high`);
    expect(notices.map((one) => [one.kind, one.channel, one.targetId])).toEqual([
      [kind, 'web-push', 'phone-1'],
      [kind, 'webhook', 'webhook'],
    ]);
  });

  it('is written with the alarm, the chamber and the moment it was decided', () => {
    expect(decide('occurred').notices[0]).toEqual({
      id: `${hot.id}.raised.${AT_MS.toString(36)}.phone-1`,
      alarmId: hot.id,
      chamberId: 'tent-1',
      kind: 'raised',
      channel: 'web-push',
      targetId: 'phone-1',
      personId: 'p1',
      decidedMs: AT_MS,
      urgent: true,
    });
  });

  it('has the same id when it is decided twice, and another for another target, kind or moment', () => {
    const ids = [decide('occurred'), decide('escalated')].flatMap(({ notices }) => notices.map(({ id }) => id));
    expect(new Set(ids).size).toBe(4);
    expect(decide('occurred')).toEqual(decide('occurred'));
  });
});

describe('by priority', () => {
  it.each([
    { priority: 'critical', told: true, urgent: true, why: 'plants are being lost' },
    { priority: 'high', told: true, urgent: true, why: 'plants will be lost soon' },
    { priority: 'medium', told: true, urgent: false, why: 'it can wait for the phone to wake' },
    { priority: 'low', told: false, urgent: false, why: 'it waits on the screen' },
  ] as const)('$priority is told: $told, urgent: $urgent, for $why', ({ priority, told, urgent }) => {
    const { notices } = decide('occurred', { priority });
    expect(notices.length > 0).toBe(told);
    expect(notices.every((one) => one.urgent === urgent)).toBe(true);
  });

  it('says why a low one is not told', () => {
    expect(decide('occurred', { priority: 'low' }).reason).toBe('priority low waits on the screen');
    expect(decide('returned', { priority: 'low' }).notices).toEqual([]);
  });
});

describe('nobody is told', () => {
  const silent = ['eased', 'peaked', 'acknowledged', 'shelved', 'suppressed', 'taken-out-of-service', 'ended'] as const;
  it.each(silent)('that it is %s', (change) => {
    expect(decide(change)).toEqual({ notices: [], reason: `a change "${change}" is not told` });
  });

  it.each([
    { change: 'occurred-again', state: 'shelved', why: 'somebody has put it aside for a while' },
    { change: 'escalated', state: 'shelved', why: 'the same, though it got worse' },
    { change: 'unshelved', state: 'normal', why: 'it came off the shelf with its condition gone' },
  ] as const)('when $change leaves it $state: $why', ({ change, state }) => {
    expect(decide(change, { state })).toEqual({ notices: [], reason: `the alarm is ${state}` });
  });

  it('where there is nothing to tell through', () => {
    expect(decide('occurred', {}, [])).toEqual({ notices: [], reason: 'no phone, no e-mail and no webhook is set up' });
  });
});

describe('a return', () => {
  it('is told to those who were told of the alarm, and to nobody else', () => {
    const { notices } = decide('returned', {}, [phone, other, hook], ['phone-2']);
    expect(notices.map(({ targetId }) => targetId)).toEqual(['phone-2']);
  });

  it('is not sent where somebody was told who can be told no more', () => {
    expect(decide('returned', {}, [phone], ['phone-gone'])).toEqual({ notices: [], reason: 'nobody was told of it' });
  });

  it('is told while it is shelved too, and when it ends with its batch', () => {
    expect(decide('returned', { state: 'shelved', level: 0 }).notices).toHaveLength(2);
    expect(decide('returned', { state: 'normal', level: 0 }).notices).toHaveLength(2);
  });

  it('is told of an alarm that had been more than low once', () => {
    expect(decide('returned', { rule: 'wet', priority: 'medium', level: 0 }).notices).toHaveLength(2);
  });
});

describe('during a flood', () => {
  const both = [phone, hook];
  const inFlood = (change: AlarmChange, alarm: Partial<Alarm> = {}) =>
    decide(change, alarm, both, ['phone-1', 'webhook'], true);

  it.each([
    { change: 'occurred', priority: 'high', told: 0, why: 'the flood is told in one' },
    { change: 'escalated', priority: 'high', told: 0, why: 'the same' },
    { change: 'occurred', priority: 'critical', told: 2, why: 'plants are being lost' },
    { change: 'escalated', priority: 'critical', told: 2, why: 'it has become the worst' },
    { change: 'returned', priority: 'high', told: 2, why: 'somebody waits for it' },
  ] as const)('a $priority one that is $change is told $told times: $why', ({ change, priority, told }) => {
    expect(inFlood(change, { priority }).notices).toHaveLength(told);
  });

  it('says why it is not told', () => {
    expect(inFlood('occurred').reason).toBe('a flood is told in one notice');
  });

  it('one notice for each target stands for all, with an id that is the same when it is decided twice', () => {
    const notices = floodNotices(hot, both, AT_MS);
    expect(notices.map(({ kind, targetId, urgent }) => [kind, targetId, urgent])).toEqual([
      ['flood', 'phone-1', true],
      ['flood', 'webhook', true],
    ]);
    expect(floodNotices(hot, both, AT_MS)).toEqual(notices);
  });

  it.each([
    { change: 'occurred', priority: 'medium', counts: true, why: 'a new alarm that is told' },
    { change: 'occurred', priority: 'low', counts: false, why: 'it rings nowhere' },
    { change: 'occurred-again', priority: 'high', counts: false, why: 'it is not new' },
    { change: 'escalated', priority: 'critical', counts: false, why: 'it is not new' },
  ] as const)('a $priority one that is $change counts: $counts, since $why', ({ change, priority, counts }) => {
    expect(countsForFlood({ change, alarm: { ...hot, priority } })).toBe(counts);
  });
});
