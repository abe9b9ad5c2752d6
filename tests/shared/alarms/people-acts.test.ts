// What people do to an alarm, and what they are told when it changes nothing.

import { describe, expect, it } from 'vitest';
import { reduce } from '../../../shared/alarms/reduce.ts';
import type { WatchEvent } from '../../../shared/alarms/watch-state.ts';
import { sayWhyNothing } from '../../../shared/alarms/why-nothing.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { english } from '../../../shared/words/en/english.ts';
import { acknowledge, type RunningWatch, runHotWatch, shelve, told, unshelve } from './run-watch.ts';
import { climateOf, NOON_MS } from './scenes.ts';

const warm = (temperature: number) => ({ climate: climateOf(temperature, 90) });

/** Why an act has no effect; fails when it has one. */
function reasonOf(watch: RunningWatch, act: WatchEvent): string {
  const before = watch.state();
  const { state, effects } = reduce(before, act);
  expect(state).toBe(before);
  expect(effects).toHaveLength(1);
  return effects[0]?.type === 'nothing'
    ? sayWhyNothing(effects[0].reason, english)
    : expect.fail('the act had an effect');
}

describe('acknowledging', () => {
  it('says who has it, and when', () => {
    const watch = runHotWatch();
    const [change] = watch.take(acknowledge(watch.hot, 2 * MINUTE_MS));
    expect(change).toMatchObject({ change: 'acknowledged', from: 'unacknowledged', person: 'Ann', note: '' });
    expect(change?.alarm).toEqual({
      ...watch.hot,
      state: 'acknowledged',
      acknowledgedBy: 'Ann',
      acknowledgedMs: NOON_MS + 2 * MINUTE_MS,
    });
  });

  it('what has returned ends it', () => {
    const watch = runHotWatch();
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    const changes = watch.take(acknowledge(watch.hot, 4 * MINUTE_MS));
    expect(told(changes)).toEqual(['heat acknowledged: returned-unacknowledged → normal']);
    expect(changes[0]?.alarm).toMatchObject({ acknowledgedBy: 'Ann', returnedMs: NOON_MS + 3 * MINUTE_MS });
    expect(watch.alarm('heat')).toBeNull();
  });

  it('a second time changes nothing and names who was first', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 2 * MINUTE_MS));
    expect(reasonOf(watch, acknowledge(watch.hot, 3 * MINUTE_MS, 'Bea'))).toBe('Ann has acknowledged it already.');
  });

  it('what is over changes nothing', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 2 * MINUTE_MS));
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    const reason = 'This alarm is over: there is nothing left to do.';
    expect(reasonOf(watch, acknowledge(watch.hot, 4 * MINUTE_MS))).toBe(reason);
    expect(reasonOf(watch, shelve(watch.hot, 4 * MINUTE_MS, HOUR_MS))).toBe(reason);
    expect(reasonOf(watch, acknowledge({ ...watch.hot, id: 'never.was' }, 4 * MINUTE_MS))).toBe(reason);
  });

  it('what is on the shelf changes nothing, also when somebody had it before', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 2 * MINUTE_MS));
    watch.take(shelve(watch.hot, 3 * MINUTE_MS, HOUR_MS));
    expect(reasonOf(watch, acknowledge(watch.hot, 4 * MINUTE_MS))).toBe('The alarm is shelved: this changes nothing.');
  });
});

describe('shelving', () => {
  it('needs a time and a reason, and says who did it', () => {
    const watch = runHotWatch();
    const [change] = watch.take(shelve(watch.hot, 2 * MINUTE_MS, HOUR_MS));
    expect(change).toMatchObject({ change: 'shelved', person: 'Ann', note: 'the heating is being repaired' });
    expect(change?.alarm).toEqual({
      ...watch.hot,
      state: 'shelved',
      shelvedUntilMs: NOON_MS + HOUR_MS,
      shelvedReason: 'the heating is being repaired',
    });
  });

  it('twice changes nothing', () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, 2 * MINUTE_MS, HOUR_MS));
    expect(reasonOf(watch, shelve(watch.hot, 3 * MINUTE_MS, 2 * HOUR_MS))).toBe(
      'The alarm is shelved: this changes nothing.',
    );
  });

  it('is only undone where it was done', () => {
    const watch = runHotWatch();
    expect(reasonOf(watch, unshelve(watch.hot, 2 * MINUTE_MS))).toBe(
      'The alarm is not acknowledged: this changes nothing.',
    );
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    expect(reasonOf(watch, unshelve(watch.hot, 4 * MINUTE_MS))).toBe(
      'The alarm is over, not acknowledged: this changes nothing.',
    );
  });
});

describe('on the shelf', () => {
  const shelved = () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, 90 * SECOND_MS, HOUR_MS));
    return watch;
  };

  it('an alarm whose condition clears stays shelved, and says that it has returned', () => {
    const watch = shelved();
    expect(told(watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS))).toEqual(['heat returned: shelved → shelved']);
    expect(watch.alarm('heat')).toMatchObject({ level: 0, returnedMs: NOON_MS + 3 * MINUTE_MS });
  });

  it('one that comes again stays shelved', () => {
    const watch = shelved();
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    expect(told(watch.heat(28.2, 4 * MINUTE_MS, 5 * MINUTE_MS))).toEqual(['heat occurred-again: shelved → shelved']);
    expect(watch.alarm('heat')).toMatchObject({ level: 1, returnedMs: null, sinceMs: NOON_MS + 4 * MINUTE_MS });
  });

  it('one that gets worse stays shelved, with its new priority and limit', () => {
    const watch = shelved();
    const changes = watch.heat(30, 2 * MINUTE_MS, 3 * MINUTE_MS);
    expect(told(changes)).toEqual(['heat peaked: shelved → shelved', 'heat escalated: shelved → shelved']);
    expect(watch.alarm('heat')).toMatchObject({ priority: 'critical', limit: 29, level: 2 });
  });
});

describe('off the shelf', () => {
  it('by a person while the condition stands it asks anew', () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, 2 * MINUTE_MS, HOUR_MS));
    const [change] = watch.take(unshelve(watch.hot, 3 * MINUTE_MS, 'Bea'));
    expect(change).toMatchObject({ change: 'unshelved', from: 'shelved', person: 'Bea' });
    expect(change?.alarm).toMatchObject({ state: 'unacknowledged', shelvedUntilMs: null, shelvedReason: null });
  });

  it('nobody has it, though somebody had acknowledged it before it was shelved', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 2 * MINUTE_MS));
    watch.take(shelve(watch.hot, 3 * MINUTE_MS, HOUR_MS));
    watch.take(unshelve(watch.hot, 4 * MINUTE_MS));
    expect(watch.alarm('heat')).toMatchObject({ acknowledgedMs: null, acknowledgedBy: null });
  });

  it('with its condition gone it is over, and keeps who had acknowledged it', () => {
    const watch = runHotWatch();
    watch.take(acknowledge(watch.hot, 80 * SECOND_MS));
    watch.take(shelve(watch.hot, 90 * SECOND_MS, HOUR_MS));
    watch.heat(26, 2 * MINUTE_MS, 3 * MINUTE_MS);
    const changes = watch.take(unshelve(watch.hot, 4 * MINUTE_MS));
    expect(told(changes)).toEqual(['heat unshelved: shelved → normal']);
    expect(changes[0]?.alarm.acknowledgedBy).toBe('Ann');
    expect(watch.alarm('heat')).toBeNull();
  });

  it('by itself when its time is over, and not a moment sooner', () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, 2 * MINUTE_MS, HOUR_MS));
    expect(watch.see(HOUR_MS - 1, warm(28.5))).toEqual([]);
    const changes = watch.see(HOUR_MS, warm(28.5));
    expect(told(changes)).toEqual(['heat unshelved: shelved → unacknowledged']);
    expect(changes[0]?.person).toBeNull();
  });

  it('by itself after the condition has gone it is over', () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, 2 * MINUTE_MS, HOUR_MS));
    watch.heat(26, 3 * MINUTE_MS, 4 * MINUTE_MS);
    expect(told(watch.see(HOUR_MS))).toEqual(['heat unshelved: shelved → normal']);
  });

  it('with the batch, when that leaves', () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, 2 * MINUTE_MS, HOUR_MS));
    const changes = watch.see(3 * MINUTE_MS, { batchId: null, corridor: null });
    expect(told(changes)).toEqual(['heat returned: shelved → normal']);
    expect(changes[0]?.alarm).toMatchObject({ shelvedUntilMs: null, shelvedReason: null });
    expect(watch.see(HOUR_MS, { batchId: null, corridor: null })).toEqual([]);
  });
});
