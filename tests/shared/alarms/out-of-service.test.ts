// A rule of a chamber out of service: it raises nothing, its alarms are set aside, and returning it looks at the condition anew.

import { describe, expect, it } from 'vitest';
import { reduce } from '../../../shared/alarms/reduce.ts';
import { emptyWatch, outOfServiceOf, type WatchEvent } from '../../../shared/alarms/watch-state.ts';
import { sayWhyNothing, type WhyNothing } from '../../../shared/alarms/why-nothing.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { english } from '../../../shared/words/en/english.ts';
import { runHotWatch, runWatch, shelve, told } from './run-watch.ts';
import { climateOf, NOON_MS, probeHeard } from './scenes.ts';

const at = (minutes: number) => minutes * MINUTE_MS;
const take = (minutes: number, rule: 'heat' | 'silent-probe' = 'heat'): WatchEvent => ({
  type: 'take-out-of-service',
  ...{ rule, person: 'Mo', nowMs: NOON_MS + at(minutes), reason: 'the cable is being laid anew' },
});
const giveBack = (minutes: number, rule: 'heat' | 'silent-probe' = 'heat'): WatchEvent => ({
  type: 'return-to-service',
  ...{ rule, person: 'Mo', nowMs: NOON_MS + at(minutes) },
});

describe('a rule without an alarm', () => {
  it('is taken out with who, when and why, raises nothing, and is returned', () => {
    const watch = runWatch();
    expect(watch.take(take(0))).toEqual([]);
    const taken = { person: 'Mo', atMs: NOON_MS, reason: 'the cable is being laid anew' };
    expect(outOfServiceOf(watch.state(), 'heat')).toEqual(taken);
    expect(watch.heat(31, at(1), at(10))).toEqual([]);
    expect(watch.take(giveBack(11))).toEqual([]);
    expect(outOfServiceOf(watch.state(), 'heat')).toBeNull();
    expect(told(watch.heat(31, at(11), at(11)))).toEqual(['heat occurred: normal → unacknowledged']);
    expect(watch.alarm('heat')?.sinceMs).toBe(NOON_MS + at(1));
  });

  it('leaves the other rules of the chamber in service', () => {
    const watch = runWatch();
    watch.take(take(0));
    watch.see(0, { climate: climateOf(31, 82) });
    expect(told(watch.see(at(5), { climate: climateOf(31, 82) }))).toEqual(['dry occurred: normal → unacknowledged']);
  });
});

describe('a rule with alarms', () => {
  it('sets them aside with person and reason, and brings back what still stands', () => {
    const watch = runHotWatch();
    const [change] = watch.take(take(2));
    expect(change).toMatchObject({ change: 'taken-out-of-service', person: 'Mo', alarm: { state: 'out-of-service' } });
    expect(change?.note).toBe('the cable is being laid anew');
    expect(told(watch.take(giveBack(5)))).toEqual(['heat returned-to-service: out-of-service → unacknowledged']);
  });

  it('is normal on its return when the condition has gone meanwhile', () => {
    const watch = runHotWatch();
    watch.take(take(2));
    expect(told(watch.heat(24, at(3), at(5)))).toEqual(['heat returned: out-of-service → out-of-service']);
    expect(told(watch.take(giveBack(6)))).toEqual(['heat returned-to-service: out-of-service → normal']);
    expect(watch.alarm('heat')).toBeNull();
  });

  it('takes one from its shelf', () => {
    const watch = runHotWatch();
    watch.take(shelve(watch.hot, at(2), at(60)));
    watch.take(take(3));
    expect(watch.alarm('heat')).toMatchObject({ state: 'out-of-service', shelvedUntilMs: null, shelvedReason: null });
    expect(watch.heat(28.5, at(61), at(61))).toEqual([]);
  });

  it('holds for each probe that the rule is about', () => {
    const watch = runWatch();
    const probes = [probeHeard(at(20)), probeHeard(at(20), { probeId: 'p2' })];
    watch.see(0, { probes });
    expect(watch.take(take(1, 'silent-probe'))).toHaveLength(2);
    expect(watch.see(at(2), { probes: [...probes, probeHeard(at(20), { probeId: 'p3' })] })).toEqual([]);
    expect(told(watch.take(giveBack(3, 'silent-probe')))).toHaveLength(2);
  });

  it('stays out of service when the batch leaves', () => {
    const watch = runHotWatch();
    watch.take(take(2));
    watch.see(at(3), { batchId: 'batch-2', climate: climateOf(31, 90) });
    expect(outOfServiceOf(watch.state(), 'heat')).not.toBeNull();
    expect(watch.alarm('heat')).toBeNull();
  });
});

describe('an act without effect', () => {
  it.each([
    { events: [take(0)], act: take(1), reason: { why: 'rule-taken-already', person: 'Mo' } },
    { events: [], act: giveBack(1), reason: { why: 'rule-in-service' } },
  ])('says why: $reason.why', ({ events, act, reason }) => {
    const state = events.reduce((one, event) => reduce(one, event).state, emptyWatch('tent-1'));
    expect(reduce(state, act)).toEqual({ state, effects: [{ type: 'nothing', reason }] });
    expect(sayWhyNothing(reason as WhyNothing, english)).toMatch(/^[A-Z].+\.$/);
  });
});
