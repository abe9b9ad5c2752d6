// What is wrong with a profile that someone wrote: every fault, in words, with its place.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Limit } from '../../../shared/healing/profile.ts';
import { findProfileFaults } from '../../../shared/healing/profile-faults.ts';
import { sayFaults } from '../../../shared/problem.ts';
import { english } from '../../../shared/words/en/english.ts';
import { constant, plainProfile, plainStage } from './sample-plan.ts';

const basis = 'ours';
const check = { id: 'look', question: 'Is it so?', ifNo: 'Make it so.', afterHours: 3, overdueMinutes: 60, basis };

const faultsOf = (candidate: unknown) => sayFaults(findProfileFaults(candidate).faults, english);
const places = (candidate: unknown) => faultsOf(candidate).map(({ where }) => where);

describe('a sound profile', () => {
  it('has no fault and comes back with its defaults filled in', () => {
    const { overdueMinutes: _, ...without } = check;
    const { document, faults } = findProfileFaults({ ...plainProfile(), checks: [without] });
    expect(faults).toEqual([]);
    expect(document?.checks[0]?.overdueMinutes).toBe(60);
  });

  it('may have limits that touch, and stages without loading, venting or hardening', () => {
    const humidity = { lowLow: constant(90), low: constant(90), high: constant(90), highHigh: constant(90) };
    expect(faultsOf(plainProfile({ stages: [plainStage('closed', 0, { humidity })] }))).toEqual([]);
  });
});

describe('faults of shape', () => {
  const plain = plainProfile();
  const limit = (value: unknown) => ({
    ...plain,
    stages: [{ ...plain.stages[1], humidity: { low: value, high: constant(100) } }],
  });
  const rows: { why: string; candidate: unknown; where: string; reason: string }[] = [
    { why: 'nothing at all', candidate: null, where: '', reason: 'must be an object, not null' },
    { why: 'a list', candidate: [], where: '', reason: 'must be an object, not a list' },
    {
      why: 'a missing field',
      candidate: { ...plain, grace: undefined },
      where: '/grace',
      reason: 'is missing: give an object',
    },
    {
      why: 'an unknown field',
      candidate: { ...plain, 'a/b~c': 1 },
      where: '/a~1b~0c',
      reason: 'is not a known field: remove it or correct its name',
    },
    { why: 'a field left empty', candidate: { ...plain, name: '' }, where: '/name', reason: 'must not be empty' },
    {
      why: 'text too long',
      candidate: { ...plain, name: 'x'.repeat(81) },
      where: '/name',
      reason: 'must be text of at most 80 characters, not 81',
    },
    {
      why: 'text for a number',
      candidate: { ...plain, silenceMinutes: '15' },
      where: '/silenceMinutes',
      reason: 'must be a number, not the text "15"',
    },
    {
      why: 'a number too small',
      candidate: { ...plain, silenceMinutes: 0 },
      where: '/silenceMinutes',
      reason: 'must be above 0, not 0',
    },
    {
      why: 'a number too large',
      candidate: { ...plain, silenceMinutes: 241 },
      where: '/silenceMinutes',
      reason: 'must be at most 240, not 241',
    },
    {
      why: 'no number',
      candidate: { ...plain, silenceMinutes: Number.NaN },
      where: '/silenceMinutes',
      reason: 'must be a number, not NaN',
    },
    {
      why: 'a malformed time of day',
      candidate: { ...plain, endsNotBefore: '7:00' },
      where: '/endsNotBefore',
      reason: 'cannot be read: write a time of day as HH:MM, for example 07:00',
    },
    {
      why: 'an unknown shape',
      candidate: limit({ shape: 'curve' }),
      where: '/stages/0/humidity/low/shape',
      reason: 'must be one of constant, ramp, stairs, levels, not the text "curve"',
    },
    {
      why: 'a shape left out',
      candidate: limit({ value: 3 }),
      where: '/stages/0/humidity/low/shape',
      reason: 'is missing: give one of constant, ramp, stairs, levels',
    },
    {
      why: 'a half step',
      candidate: limit({ shape: 'stairs', from: 90, to: 60, steps: 1.5, basis }),
      where: '/stages/0/humidity/low/steps',
      reason: 'must be a whole number, not 1.5',
    },
    {
      why: 'no levels',
      candidate: limit({ shape: 'levels', values: [], basis }),
      where: '/stages/0/humidity/low/values',
      reason: 'must not be empty',
    },
    {
      why: 'an end that is neither number nor house',
      candidate: limit({ shape: 'ramp', from: 90, to: 'house', basis }),
      where: '/stages/0/humidity/low/to',
      reason: 'must be a number, or an object with houseOffset and fallback, not the text "house"',
    },
    {
      why: 'a house end without its number to fall back on',
      candidate: limit({ shape: 'ramp', from: 90, to: { houseOffset: 5 }, basis }),
      where: '/stages/0/humidity/low/to/fallback',
      reason: 'is missing: give a number',
    },
    {
      why: 'a house end with a misspelt field',
      candidate: limit({ shape: 'ramp', from: 90, to: { houseOffset: 5, fallback: 60, fallBack: 5 }, basis }),
      where: '/stages/0/humidity/low/to/fallBack',
      reason: 'is not a known field: remove it or correct its name',
    },
  ];
  it.each(rows)('tells $why', ({ candidate, where, reason }) => {
    expect(faultsOf(candidate)).toContainEqual({ where, reason });
    expect(findProfileFaults(candidate).document).toBeNull();
  });
});

describe('faults of the stages', () => {
  const closed = plainStage('closed', 0);
  const rows = [
    { why: 'closed is missing', stages: [plainStage('venting', 96)], where: ['/stages'] },
    {
      why: 'a stage stands twice',
      stages: [closed, plainStage('venting', 96), plainStage('venting', 120)],
      where: ['/stages/2/stage'],
    },
    {
      why: 'stages are out of order',
      stages: [closed, plainStage('hardening', 96), plainStage('venting', 120)],
      where: ['/stages/2/stage'],
    },
    { why: 'loading stands after closed', stages: [closed, plainStage('loading', 0)], where: ['/stages/1/stage'] },
    {
      why: 'hours do not increase',
      stages: [closed, plainStage('venting', 96), plainStage('hardening', 96)],
      where: ['/stages/2/afterHours'],
    },
    { why: 'venting begins with closing', stages: [closed, plainStage('venting', 0)], where: ['/stages/1/afterHours'] },
    { why: 'closed has an hour', stages: [plainStage('closed', 2)], where: ['/stages/0/afterHours'] },
    {
      why: 'closed has a time of day',
      stages: [plainStage('closed', 0, { notBefore: '07:00' })],
      where: ['/stages/0/notBefore'],
    },
    {
      why: 'the end is before the last stage',
      stages: [closed, plainStage('venting', 250)],
      where: ['/endsAfterHours'],
    },
    { why: 'the end is with the last stage', stages: [closed, plainStage('venting', 192)], where: ['/endsAfterHours'] },
  ];
  it.each(rows)('are told when $why', ({ stages, where }) => {
    expect(places(plainProfile({ stages }))).toEqual(where);
  });

  it('are not told of an end a moment after the last stage', () => {
    expect(places(plainProfile({ stages: [closed, plainStage('venting', 191.9)] }))).toEqual([]);
  });
});

describe('faults of the limits', () => {
  const ramp = (from: number, to: number): Limit => ({ shape: 'ramp', from, to, basis });
  const stairs = (from: number, to: number, steps: number): Limit => ({ shape: 'stairs', from, to, steps, basis });
  const house = (houseOffset: number, fallback: number): Limit => ({
    shape: 'levels',
    values: [{ houseOffset, fallback }],
    basis,
  });
  const faultsWith = (humidity: { lowLow?: Limit; low: Limit; high: Limit; highHigh?: Limit }) =>
    faultsOf(plainProfile({ stages: [plainStage('closed', 0, { humidity })] }));

  it.each([
    { why: 'low above high', humidity: { low: constant(90.1), high: constant(90) }, at: 'low' },
    {
      why: 'low-low above low',
      humidity: { lowLow: constant(85), low: constant(84), high: constant(90) },
      at: 'lowLow',
    },
    {
      why: 'high above high-high',
      humidity: { low: constant(80), high: constant(95), highHigh: constant(94) },
      at: 'high',
    },
    { why: 'ramps that cross at the end', humidity: { low: ramp(80, 90), high: ramp(95, 85) }, at: 'low' },
    { why: 'ramps that cross at the beginning', humidity: { low: ramp(96, 70), high: ramp(95, 85) }, at: 'low' },
    {
      why: 'high stairs that step below a low ramp',
      humidity: { low: ramp(90, 60), high: stairs(100, 70, 2) },
      at: 'low',
    },
    {
      why: 'a level that dips below for its share',
      humidity: { low: constant(80), high: { shape: 'levels' as const, values: [90, 79, 90], basis } },
      at: 'low',
    },
    { why: 'a crossing at the fallback numbers', humidity: { low: house(-10, 80), high: house(10, 70) }, at: 'low' },
    {
      why: 'offsets that cross, whatever the house',
      humidity: { low: house(10, 60), high: house(-10, 70) },
      at: 'low',
    },
  ])('tell $why', ({ humidity, at }) => {
    expect(faultsWith(humidity).map(({ where }) => where)).toEqual([`/stages/0/humidity/${at}`]);
  });

  it.each([
    { why: 'ramps that meet', humidity: { low: ramp(80, 85), high: ramp(95, 85) } },
    { why: 'stairs ahead of a ramp on the safe side', humidity: { low: stairs(90, 60, 4), high: ramp(100, 70) } },
    { why: 'a ramp held off by a house end', humidity: { low: ramp(90, 60), high: house(10, 95) } },
  ])('do not tell $why', ({ humidity }) => {
    expect(faultsWith(humidity)).toEqual([]);
  });

  it('say where in the stage the limits cross', () => {
    // The first of two steps puts high at 85, while low is still coming down from 90: at the very beginning.
    const [fault] = faultsWith({ low: ramp(90, 60), high: stairs(100, 70, 2) });
    expect(fault?.reason).toBe('low (90) is above high (85) 0 % of the way through the stage');
  });

  it.each([
    { why: 'a humidity above 100', quantity: 'humidity', value: 100.1, told: true },
    { why: 'a humidity of 100', quantity: 'humidity', value: 100, told: false },
    { why: 'a temperature above 60', quantity: 'temperature', value: 280, told: true },
    { why: 'a temperature of 60', quantity: 'temperature', value: 60, told: false },
  ])('$why: $told', ({ quantity, value, told }) => {
    const stage = plainStage('closed', 0, { [quantity]: { low: constant(0), high: constant(value) } });
    expect(places(plainProfile({ stages: [stage] }))).toEqual(told ? [`/stages/0/${quantity}/high`] : []);
  });

  it('look at the beginning of a ramp and at fallback numbers too', () => {
    const humidity = { low: ramp(-5, 0), high: house(0, 120) };
    expect(faultsWith(humidity).map(({ where }) => where)).toEqual([
      '/stages/0/humidity/low',
      '/stages/0/humidity/high',
    ]);
  });
});

describe('faults of the checks', () => {
  const { afterHours: _, ...momentless } = check;
  const rows = [
    { why: 'it has no moment', checks: [momentless], where: ['/checks/0'] },
    {
      why: 'it is due with the end of the plan',
      checks: [{ ...check, afterHours: 192 }],
      where: ['/checks/0/afterHours'],
    },
    {
      why: 'its stage is not in the plan',
      checks: [{ ...momentless, atStage: 'venting' as const }],
      where: ['/checks/0/atStage'],
      stages: [plainStage('closed', 0)],
    },
    {
      why: 'it is due with the end of its stage',
      checks: [{ ...check, atStage: 'venting' as const, afterHours: 48 }],
      where: ['/checks/0/afterHours'],
    },
    {
      why: 'it is due after the last stage',
      checks: [{ ...check, atStage: 'hardening' as const, afterHours: 49 }],
      where: ['/checks/0/afterHours'],
    },
    { why: 'its id stands twice', checks: [check, { ...check, afterHours: 9 }], where: ['/checks/1/id'] },
    { why: 'it repeats too fast', checks: [{ ...check, everyHours: 0.2 }], where: ['/checks/0/everyHours'] },
    {
      why: 'it ends a repeat that is not there',
      checks: [{ ...check, untilHours: 9 }],
      where: ['/checks/0/untilHours'],
    },
    {
      why: 'its repeat ends before it begins',
      checks: [{ ...check, everyHours: 1, untilHours: 2.9 }],
      where: ['/checks/0/untilHours'],
    },
  ];
  it.each(rows)('are told when $why', ({ checks, where, stages }) => {
    expect(places(plainProfile({ checks, ...(stages === undefined ? {} : { stages }) }))).toEqual(where);
  });

  it('are not told when all is within bounds', () => {
    const checks = [
      { ...check, id: 'end', afterHours: 191.9 },
      { ...check, id: 'stage', atStage: 'venting' as const, afterHours: 47.9 },
      { ...check, id: 'loading', atStage: 'loading' as const, afterHours: 5 },
      { ...check, id: 'repeat', everyHours: 0.25, untilHours: 3 },
      // Without a first hour it begins with its stage.
      { ...momentless, id: 'at-once', atStage: 'venting' as const, everyHours: 0.25, untilHours: 0.5 },
    ];
    expect(places(plainProfile({ checks }))).toEqual([]);
  });
});

describe('the list of faults', () => {
  it('has every fault, those of shape and those of rules alike', () => {
    const plain = plainProfile();
    const candidate = {
      ...plain,
      name: 7,
      stages: [
        plainStage('venting', 96),
        { ...plainStage('closed', 1), humidity: { low: constant(90), high: constant(80) } },
        { ...plainStage('hardening', 90), temperature: 'warm' },
      ],
      endsAfterHours: 50,
      checks: [
        { ...check, afterHours: 60 },
        { ...check, question: '' },
      ],
    };
    expect(places(candidate).sort()).toEqual([
      '/checks/0/afterHours',
      '/checks/1/id',
      '/checks/1/question',
      '/endsAfterHours',
      '/name',
      '/stages/1/afterHours',
      '/stages/1/humidity/low',
      '/stages/1/stage',
      '/stages/2/afterHours',
      '/stages/2/temperature',
    ]);
  });

  it('is made for anything at all, without throwing, and is empty only for a profile', () => {
    const plain = plainProfile();
    const anyChange = fc.record({ key: fc.constantFrom(...Object.keys(plain)), value: fc.anything() });
    fc.assert(
      fc.property(fc.anything(), anyChange, (anything, { key, value }) => {
        expect(findProfileFaults(anything).faults.length).toBeGreaterThan(0);
        const { document, faults } = findProfileFaults({ ...plain, [key]: value });
        expect(document === null).toBe(faults.length > 0);
      }),
    );
  });
});

describe('a bound on vapour pressure deficit', () => {
  const withBound = (vpdKpa: unknown) => {
    const [closed] = [plainStage('closed', 0)];
    return { ...plainProfile(), stages: [{ ...closed, vpdKpa }] };
  };
  it.each([
    { bound: { high: 0.76, basis }, faults: [], why: 'sound' },
    { bound: undefined, faults: [], why: 'not watched' },
    { bound: { high: 0, basis }, faults: ['/stages/0/vpdKpa/high'], why: 'nothing could stay below it' },
    { bound: { high: 5.1, basis }, faults: ['/stages/0/vpdKpa/high'], why: 'a slip of the hand: hPa for kPa' },
    { bound: { high: 0.76 }, faults: ['/stages/0/vpdKpa/basis'], why: 'nobody says where it is from' },
  ])('$why', ({ bound, faults }) => {
    expect(places(withBound(bound))).toEqual(faults);
  });
});
