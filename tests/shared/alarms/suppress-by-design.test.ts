// Quiet while the air is disturbed on purpose: what is suppressed, what never is, and how it comes back.
import { describe, expect, it } from 'vitest';
import { ruleIds } from '../../../shared/alarms/alarm.ts';
import { ruleOf } from '../../../shared/alarms/rules/index.ts';
import type { Scene } from '../../../shared/alarms/rules/rule.ts';
import type { Suppression } from '../../../shared/alarms/suppression.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { acknowledge, runWatch, shelve, told } from './run-watch.ts';
import { climateOf, NOON_MS } from './scenes.ts';

const working: Suppression = { cause: 'working', untilMs: NOON_MS + 60 * MINUTE_MS, person: 'Ann' };
const dryAir: Partial<Scene> = { climate: climateOf(24, 82) };
const quiet: Partial<Scene> = { suppression: working };
const at = (minutes: number) => minutes * MINUTE_MS;

/** Dry since noon, told at five past. */
function runDryWatch() {
  const watch = runWatch();
  watch.see(0, dryAir);
  expect(told(watch.see(at(5), dryAir))).toEqual(['dry occurred: normal → unacknowledged']);
  return watch;
}

it('the rules of the air are suppressed, and no other', () => {
  const suppressible = ruleIds.filter((id) => ruleOf(id).isSuppressible === true);
  expect([...suppressible].sort()).toEqual(['cold', 'dry', 'plan-late', 'vpd', 'wet']);
});

describe('an alarm in force', () => {
  it('is suppressed with the cause, and asks anew when the quiet is over and it still stands', () => {
    const watch = runDryWatch();
    const [change] = watch.see(at(6), { ...dryAir, ...quiet });
    expect(change).toMatchObject({ change: 'suppressed', from: 'unacknowledged', person: null });
    expect(change?.note).toBe('somebody is working in the tent');
    expect(watch.see(at(40), { ...dryAir, ...quiet })).toEqual([]);
    expect(told(watch.see(at(61), dryAir))).toEqual(['dry unsuppressed: suppressed → unacknowledged']);
  });

  it('is forgotten by nobody: who had acknowledged it is asked again', () => {
    const watch = runDryWatch();
    const dry = watch.alarm('dry');
    if (dry === null) throw new Error('it should be dry');
    watch.take(acknowledge(dry, at(5)));
    watch.see(at(6), { ...dryAir, ...quiet });
    watch.see(at(61), dryAir);
    expect(watch.alarm('dry')).toMatchObject({ state: 'unacknowledged', acknowledgedBy: null });
  });

  it('stays suppressed while its condition goes, and is normal afterwards', () => {
    const watch = runDryWatch();
    watch.see(at(6), { ...dryAir, ...quiet });
    watch.see(at(20), quiet);
    expect(told(watch.see(at(23), quiet))).toEqual(['dry returned: suppressed → suppressed']);
    expect(told(watch.see(at(61)))).toEqual(['dry unsuppressed: suppressed → normal']);
    expect(watch.alarm('dry')).toBeNull();
  });

  it('is not acknowledged while it is suppressed', () => {
    const watch = runDryWatch();
    watch.see(at(6), { ...dryAir, ...quiet });
    const dry = watch.alarm('dry');
    if (dry === null) throw new Error('it should be suppressed');
    expect(watch.take(acknowledge(dry, at(7)))).toEqual([]);
  });
});

it('a shelf that runs out meanwhile waits for the end of the quiet', () => {
  const watch = runDryWatch();
  const dry = watch.alarm('dry');
  if (dry === null) throw new Error('it should be dry');
  watch.take(shelve(dry, at(5), at(10)));
  expect(watch.see(at(11), { ...dryAir, ...quiet })).toEqual([]);
  expect(told(watch.see(at(61), dryAir))).toEqual(['dry unshelved: shelved → unacknowledged']);
});

describe('a condition that begins meanwhile', () => {
  it('is not told, and is told with its true beginning when it outlasts the quiet', () => {
    const watch = runWatch();
    for (const minute of [0, 10, 30, 59]) expect(watch.see(at(minute), { ...dryAir, ...quiet })).toEqual([]);
    expect(told(watch.see(at(61), dryAir))).toEqual(['dry occurred: normal → unacknowledged']);
    expect(watch.alarm('dry')?.sinceMs).toBe(NOON_MS);
  });

  it('leaves nothing behind when it is over before', () => {
    const watch = runWatch();
    watch.see(0, { ...dryAir, ...quiet });
    watch.see(at(30), quiet);
    expect(watch.see(at(61), dryAir)).toEqual([]);
  });
});

describe('what is never suppressed', () => {
  it.each([
    { why: 'heat', scene: { climate: climateOf(28.5, 90) }, alarm: 'heat' },
    { why: 'far too hot', scene: { climate: climateOf(30, 90) }, alarm: 'heat' },
    { why: 'a silent chamber', scene: { climate: climateOf(null, null) }, alarm: 'silent-chamber' },
  ] as const)('$why', ({ scene, alarm }) => {
    const watch = runWatch();
    watch.see(0, { ...scene, ...quiet });
    watch.see(at(1), { ...scene, ...quiet });
    expect(watch.alarm(alarm)?.state).toBe('unacknowledged');
  });
});
