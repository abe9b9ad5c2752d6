// Heat, cold, dry and wet: both sides of every limit and deadband, on the corridor of the scenes (20–28 °C, outer 16 and 29; 85–95 %RH, outer 80 and 98).
import { describe, expect, it } from 'vitest';
import type { Level } from '../../../../shared/alarms/alarm.ts';
import { cold } from '../../../../shared/alarms/rules/cold.ts';
import { dry } from '../../../../shared/alarms/rules/dry.ts';
import { heat } from '../../../../shared/alarms/rules/heat.ts';
import type { Rule, Scene } from '../../../../shared/alarms/rules/rule.ts';
import { wet } from '../../../../shared/alarms/rules/wet.ts';
import type { ChamberClimate } from '../../../../shared/readings/chamber-climate.ts';
import { MINUTE_MS, SECOND_MS } from '../../../../shared/units.ts';
import { climateOf, corridor, sceneAt } from '../scenes.ts';

function judge(rule: Rule, scene: Scene, held: Level = 0) {
  const [judgement, ...more] = rule.judge(scene, () => held);
  expect(more).toEqual([]);
  return judgement;
}

interface Row {
  readonly value: number;
  readonly held: Level;
  readonly level: Level;
  readonly why: string;
}

const hot: Row[] = [
  { value: 28, held: 0, level: 0, why: 'at the limit is not above it' },
  { value: 28.01, held: 0, level: 1, why: 'above the limit' },
  { value: 29, held: 0, level: 1, why: 'at the outer limit is not above it' },
  { value: 29.01, held: 0, level: 2, why: 'above the outer limit' },
  { value: 27.51, held: 1, level: 1, why: 'inside by less than the deadband' },
  { value: 27.5, held: 1, level: 0, why: 'inside by the deadband' },
  { value: 28.51, held: 2, level: 2, why: 'below the outer limit by less than the deadband' },
  { value: 28.5, held: 2, level: 1, why: 'below the outer limit by the deadband, still above the inner' },
  { value: 29, held: 1, level: 1, why: 'the deadband of a level that does not stand widens nothing' },
  { value: 27.5, held: 2, level: 0, why: 'inside both' },
];

const chilly: Row[] = [
  { value: 20, held: 0, level: 0, why: 'at the limit is not below it' },
  { value: 19.99, held: 0, level: 1, why: 'below the limit' },
  { value: 16, held: 0, level: 1, why: 'at the outer limit is not below it' },
  { value: 15.99, held: 0, level: 2, why: 'below the outer limit' },
  { value: 20.49, held: 1, level: 1, why: 'inside by less than the deadband' },
  { value: 20.5, held: 1, level: 0, why: 'inside by the deadband' },
  { value: 16.49, held: 2, level: 2, why: 'above the outer limit by less than the deadband' },
  { value: 16.5, held: 2, level: 1, why: 'above the outer limit by the deadband' },
];

const drying: Row[] = [
  { value: 85, held: 0, level: 0, why: 'at the limit is not below it' },
  { value: 84.99, held: 0, level: 1, why: 'below the limit' },
  { value: 80, held: 0, level: 1, why: 'at the outer limit is not below it' },
  { value: 79.99, held: 0, level: 2, why: 'below the outer limit' },
  { value: 86.99, held: 1, level: 1, why: 'inside by less than the deadband of 2 %RH' },
  { value: 87, held: 1, level: 0, why: 'inside by the deadband' },
  { value: 81.99, held: 2, level: 2, why: 'above the outer limit by less than the deadband' },
  { value: 82, held: 2, level: 1, why: 'above the outer limit by the deadband' },
];

const dripping: Row[] = [
  { value: 95, held: 0, level: 0, why: 'at the limit is not above it' },
  { value: 95.01, held: 0, level: 1, why: 'above the limit' },
  { value: 98, held: 0, level: 1, why: 'at the outer limit is not above it' },
  { value: 98.01, held: 0, level: 2, why: 'above the outer limit' },
  { value: 93.01, held: 1, level: 1, why: 'inside by less than the deadband of 2 %RH' },
  { value: 93, held: 1, level: 0, why: 'inside by the deadband' },
  { value: 96.01, held: 2, level: 2, why: 'below the outer limit by less than the deadband' },
  { value: 96, held: 2, level: 1, why: 'below the outer limit by the deadband' },
];

describe.each([
  { rule: heat, rows: hot, quantity: 'temperature' },
  { rule: cold, rows: chilly, quantity: 'temperature' },
  { rule: dry, rows: drying, quantity: 'humidity' },
  { rule: wet, rows: dripping, quantity: 'humidity' },
] as const)('$rule.id', ({ rule, rows, quantity }) => {
  const air = (value: number | null) => (quantity === 'temperature' ? climateOf(value, 90) : climateOf(24, value));

  it.each(rows)('$value while level $held stands is level $level: $why', ({ value, held, level }) => {
    expect(judge(rule, sceneAt(0, { climate: air(value) }), held)).toMatchObject({ level, value, probeId: null });
  });

  it('is unknown, not calm, when nobody measures', () => {
    expect(judge(rule, sceneAt(0, { climate: air(null) }), 1)).toMatchObject({ level: 'unknown', value: null });
  });

  it('has nothing to say without limits', () => {
    expect(judge(rule, sceneAt(0, { corridor: null, climate: air(0) }), 1)?.level).toBe(0);
    expect(judge(rule, sceneAt(0, { corridor: null, climate: air(99) }), 1)?.level).toBe(0);
  });

  it('names the limit of each level', () => {
    const { lowLow, low, high, highHigh } = corridor[quantity];
    const expected = rule.worse === 1 ? [high, highHigh] : [low, lowLow];
    expect(judge(rule, sceneAt(0, { climate: air(90) }))?.limits).toEqual(expected);
  });

  it('has only one level where the profile gives no outer limit', () => {
    const band = { ...corridor[quantity], lowLow: null, highHigh: null };
    const scene = sceneAt(0, { corridor: { ...corridor, [quantity]: band } });
    const far = rule.worse === 1 ? 99 : 0;
    expect(judge(rule, { ...scene, climate: air(far) })?.level).toBe(1);
  });
});

describe('which probe is believed', () => {
  const apart: ChamberClimate = {
    ...climateOf(24, 90),
    ...{ hottest: 28.5, coldest: 19, driest: 84, humidity: 90, wettest: 99 },
  };
  it.each([
    { rule: heat, value: 28.5, level: 1, why: 'the hottest: one corner too hot is too hot' },
    { rule: cold, value: 19, level: 1, why: 'the coldest' },
    { rule: dry, value: 84, level: 1, why: 'the driest: the plants there wilt' },
    { rule: wet, value: 90, level: 0, why: 'the middle one: a single drip on a probe is no wet tent' },
  ])('$rule.id goes by $why', ({ rule, value, level }) => {
    expect(judge(rule, sceneAt(0, { climate: apart }))).toMatchObject({ value, level });
  });
});

describe('a limit that cannot be passed', () => {
  it.each([
    { high: 100, humidity: 101, level: 0, why: '100 % watches nothing, and a wet sensor above 100 is no wetter air' },
    { high: 99.9, humidity: 100, level: 1, why: 'anything below 100 is a limit' },
  ])('wet at $humidity with a limit of $high: $why', ({ high, humidity, level }) => {
    const scene = sceneAt(0, { climate: climateOf(24, humidity) });
    const limits = { ...corridor, humidity: { ...corridor.humidity, high, highHigh: null } };
    expect(judge(wet, { ...scene, corridor: limits })?.level).toBe(level);
  });
});

describe('delays and priorities', () => {
  it.each([
    { rule: heat, onDelayMs: [MINUTE_MS, 30 * SECOND_MS], offDelayMs: MINUTE_MS, priority: ['high', 'critical'] },
    { rule: cold, onDelayMs: [10, 10].map(minutes), offDelayMs: 5 * MINUTE_MS, priority: ['medium', 'high'] },
    { rule: dry, onDelayMs: [5, 5].map(minutes), offDelayMs: 2 * MINUTE_MS, priority: ['high', 'critical'] },
    { rule: wet, onDelayMs: [30, 30].map(minutes), offDelayMs: 5 * MINUTE_MS, priority: ['low', 'medium'] },
  ])('of $rule.id', ({ rule, onDelayMs, offDelayMs, priority }) => {
    expect(rule).toMatchObject({ onDelayMs, offDelayMs, priority });
  });
});

function minutes(count: number): number {
  return count * MINUTE_MS;
}
