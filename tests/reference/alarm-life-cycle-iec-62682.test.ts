// The alarm state model of IEC 62682 / ISA-18.2, every state with every event. Read second-hand: published-values §4 [R2] quotes it as
// "Normal → unacknowledged on occurrence; → acknowledged on ack; acknowledged → normal when clear; unacknowledged →
// returned-unacknowledged when clear; that → normal on ack, → unacknowledged on re-alarm; acknowledged → unacknowledged on higher severity.
// Shelved, suppressed by design, out of service: leaving them → normal if clear, else unacknowledged; clearing while shelved stays shelved."
import { describe, expect, it } from 'vitest';
import { type AlarmState, alarmStates } from '../../shared/alarms/alarm.ts';
import { type LifeCycleEvent, lifeCycleEvents, nextState } from '../../shared/alarms/life-cycle.ts';

const N = 'normal';
const U = 'unacknowledged';
const A = 'acknowledged';
const R = 'returned-unacknowledged';
const S = 'shelved';
const D = 'suppressed';
const O = 'out-of-service';
/** Leaving a state in which the alarm was set aside: unacknowledged while the condition stands, else normal. */
const C = 'by condition';

// Written out by hand, column by column in the order of `columns`; a letter that repeats the row's own state means "changes nothing".
const columns: readonly LifeCycleEvent[] = [
  'occur',
  'rise',
  'clear',
  'acknowledge',
  'shelve',
  'unshelve',
  'suppress',
  'unsuppress',
  'take-out-of-service',
  'return-to-service',
  // Not of the standard, ours: an acknowledgement does not hold for ever while the condition stands.
  'ask-anew',
];
type Cell = AlarmState | typeof C;
const model: Record<AlarmState, readonly Cell[]> = {
  //                          occur rise clear ack shelve unshelve suppress unsuppress out-of-service in-service ask-anew
  normal: /*               */ [U, N, N, N, S, N, D, N, O, N, N],
  unacknowledged: /*       */ [U, U, R, A, S, U, D, U, O, U, U],
  acknowledged: /*         */ [A, U, N, A, S, A, D, A, O, A, U],
  'returned-unacknowledged': [U, R, R, N, S, R, D, R, O, R, R],
  shelved: /*              */ [S, S, S, S, S, C, S, S, O, S, S],
  suppressed: /*           */ [D, D, D, D, D, D, D, C, O, D, D],
  'out-of-service': /*     */ [O, O, O, O, O, O, O, O, O, C, O],
};

const cases = alarmStates.flatMap((state) =>
  lifeCycleEvents.flatMap((event) =>
    [true, false].map((stands) => {
      const cell = model[state][columns.indexOf(event)];
      const expected = cell === C ? (stands ? U : N) : cell;
      return { state, event, condition: stands ? 'stands' : 'is gone', stands, expected };
    }),
  ),
);

describe('IEC 62682 state model', () => {
  it('is checked for every state and every event there is', () => {
    expect([...columns].sort()).toEqual([...lifeCycleEvents].sort());
    expect(cases).toHaveLength(7 * 11 * 2);
    expect(cases.filter(({ expected }) => expected === undefined)).toEqual([]);
  });

  it.each(cases)('$state, $event while the condition $condition: $expected', ({ state, event, stands, expected }) => {
    expect(nextState(state, event, stands)).toBe(expected);
  });
});

describe('the sentences of the model, one by one', () => {
  it.each([
    { from: N, event: 'occur', stands: true, to: U, why: 'normal → unacknowledged on occurrence' },
    { from: U, event: 'acknowledge', stands: true, to: A, why: '→ acknowledged on ack' },
    { from: A, event: 'clear', stands: false, to: N, why: 'acknowledged → normal when clear' },
    { from: U, event: 'clear', stands: false, to: R, why: 'unacknowledged → returned-unacknowledged when clear' },
    { from: R, event: 'acknowledge', stands: false, to: N, why: 'that → normal on ack' },
    { from: R, event: 'occur', stands: true, to: U, why: 'that → unacknowledged on re-alarm' },
    { from: A, event: 'rise', stands: true, to: U, why: 'acknowledged → unacknowledged on higher severity' },
    { from: S, event: 'unshelve', stands: false, to: N, why: 'leaving shelved → normal if clear' },
    { from: S, event: 'unshelve', stands: true, to: U, why: 'leaving shelved → else unacknowledged' },
    { from: D, event: 'unsuppress', stands: false, to: N, why: 'leaving suppressed → normal if clear' },
    { from: D, event: 'unsuppress', stands: true, to: U, why: 'leaving suppressed → else unacknowledged' },
    { from: O, event: 'return-to-service', stands: false, to: N, why: 'leaving out of service → normal if clear' },
    { from: O, event: 'return-to-service', stands: true, to: U, why: 'leaving out of service → else unacknowledged' },
    { from: S, event: 'clear', stands: false, to: S, why: 'clearing while shelved stays shelved' },
  ] as const)('$why', ({ from, event, stands, to }) => {
    expect(nextState(from, event, stands)).toBe(to);
  });
});
