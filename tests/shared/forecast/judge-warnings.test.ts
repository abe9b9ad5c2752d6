// What makes a warning right, late or false, and a spell beyond the limit a crossing.
import { describe, expect, it } from 'vitest';
import { SpellFinder } from '../../../shared/forecast/find-spells.ts';
import { judgeWarnings, type Spell, type Warning } from '../../../shared/forecast/judge-warnings.ts';
import { DAY_MS, MINUTE_MS } from '../../../shared/units.ts';

const ms = (minutes: number) => minutes * MINUTE_MS;
const WEEK = { knownMs: 7 * DAY_MS, endMs: 7 * DAY_MS };
const warning = (from: number, to: number | null): Warning => ({ fromMs: ms(from), toMs: to === null ? null : ms(to) });
const spell = (from: number, to: number, isCrossing = true): Spell => ({ fromMs: ms(from), toMs: ms(to), isCrossing });

interface Case {
  readonly why: string;
  readonly warnings: readonly Warning[];
  readonly spells: readonly Spell[];
  readonly caught: number;
  readonly lead: number | null;
  readonly wrong: number;
}

const cases: readonly Case[] = [
  {
    why: 'a warning before a crossing catches it',
    warnings: [warning(100, 115)],
    spells: [spell(112, 130)],
    caught: 1,
    lead: 12,
    wrong: 0,
  },
  {
    why: 'one that still stands at the end does too',
    warnings: [warning(100, null)],
    spells: [spell(112, 130)],
    caught: 1,
    lead: 12,
    wrong: 0,
  },
  {
    why: 'one that ends with the crossing does',
    warnings: [warning(100, 112)],
    spells: [spell(112, 130)],
    caught: 1,
    lead: 12,
    wrong: 0,
  },
  {
    why: 'one taken back just before does not, but was not false',
    warnings: [warning(100, 111)],
    spells: [spell(112, 130)],
    caught: 0,
    lead: null,
    wrong: 0,
  },
  {
    why: 'an hour ahead is the longest that counts',
    warnings: [warning(52, null)],
    spells: [spell(112, 130)],
    caught: 1,
    lead: 60,
    wrong: 0,
  },
  {
    why: 'longer ahead helps nobody and was false',
    warnings: [warning(51, null)],
    spells: [spell(112, 130)],
    caught: 0,
    lead: null,
    wrong: 1,
  },
  {
    why: 'with the crossing is not before it',
    warnings: [warning(112, null)],
    spells: [spell(112, 130)],
    caught: 0,
    lead: null,
    wrong: 0,
  },
  {
    why: 'of two warnings the later one counts',
    warnings: [warning(80, 90), warning(108, null)],
    spells: [spell(112, 130)],
    caught: 1,
    lead: 4,
    wrong: 0,
  },
  { why: 'nothing follows', warnings: [warning(100, 120)], spells: [], caught: 0, lead: null, wrong: 1 },
  {
    why: 'a spell that nobody could foresee is no crossing, and makes no warning false',
    warnings: [warning(100, null)],
    spells: [spell(112, 130, false)],
    caught: 0,
    lead: null,
    wrong: 0,
  },
  {
    why: 'a warning in the middle of a spell is not false',
    warnings: [warning(120, 121)],
    spells: [spell(112, 130)],
    caught: 0,
    lead: null,
    wrong: 0,
  },
  {
    why: 'the median of two is between them',
    warnings: [warning(100, 113), warning(300, 321)],
    spells: [spell(112, 115), spell(320, 325)],
    caught: 2,
    lead: 16,
    wrong: 0,
  },
];

describe('judgeWarnings', () => {
  it.each(cases)('$why', ({ warnings, spells, caught, lead, wrong }) => {
    expect(judgeWarnings(warnings, spells, WEEK)).toEqual({
      warnings: warnings.length,
      crossings: spells.filter(({ isCrossing }) => isCrossing).length,
      caught,
      medianLeadMinutes: lead,
      falsePerWeek: wrong,
    });
  });

  it('counts false alarms by the week of known time', () => {
    const two = [warning(100, 110), warning(300, 310)];
    expect(judgeWarnings(two, [], { knownMs: 3.5 * DAY_MS, endMs: 7 * DAY_MS }).falsePerWeek).toBe(4);
    expect(judgeWarnings([], [], { knownMs: 0, endMs: 0 }).falsePerWeek).toBe(0);
  });

  it('leaves open what nobody can know yet: a warning less than an hour before the end', () => {
    const at = (minutes: number) =>
      judgeWarnings([warning(minutes, null)], [], { knownMs: 7 * DAY_MS, endMs: ms(200) }).falsePerWeek;
    expect([at(140), at(141)]).toEqual([1, 0]);
  });
});

describe('SpellFinder', () => {
  /** Readings as `minute: beyond?`. */
  function find(readings: readonly [number, boolean | null][]): { spells: readonly Spell[]; knownMinutes: number } {
    const finder = new SpellFinder(ms(15));
    for (const [minute, isBeyond] of readings) finder.add(ms(minute), isBeyond);
    return { spells: finder.spells, knownMinutes: finder.knownMs / MINUTE_MS };
  }
  const quietUntil = (minute: number): [number, boolean][] =>
    Array.from({ length: minute / 10 }, (_, i) => [i * 10, false]);

  it('calls it a crossing after half an hour of quiet that was seen', () => {
    expect(find([...quietUntil(40), [40, true], [50, true]]).spells).toEqual([spell(40, 50)]);
    expect(
      find([
        [0, false],
        [10, false],
        [29, true],
      ]).spells,
    ).toEqual([spell(29, 29, false)]);
    expect(
      find([
        [0, false],
        [10, false],
        [20, false],
        [30, true],
      ]).spells,
    ).toEqual([spell(30, 30)]);
  });

  it('takes short dips inside for the same spell', () => {
    const { spells } = find([
      ...quietUntil(40),
      [40, true],
      [50, false],
      [60, true],
      [70, false],
      [80, false],
      [90, true],
    ]);
    expect(spells).toEqual([spell(40, 90)]);
  });

  it('begins a new one after half an hour inside', () => {
    const { spells } = find([...quietUntil(40), [40, true], [50, false], [60, false], [70, false], [80, true]]);
    expect(spells).toEqual([spell(40, 40), spell(80, 80)]);
  });

  it('knows of no crossing after a silence, at the beginning, or where no limit held', () => {
    expect(find([[0, true]]).spells).toEqual([spell(0, 0, false)]);
    expect(find([...quietUntil(40), [46, true]]).spells, 'a gap of 16 minutes').toEqual([spell(46, 46, false)]);
    expect(find([...quietUntil(40), [45, true]]).spells, 'a gap of 15 is joined').toEqual([spell(45, 45)]);
    expect(find([...quietUntil(40), [40, null], [50, true]]).spells).toEqual([spell(50, 50, false)]);
  });

  it('adds up the time that readings speak for', () => {
    expect(
      find([
        [0, false],
        [10, false],
        [25, true],
        [41, true],
        [42, null],
        [43, true],
        [44, false],
      ]).knownMinutes,
    ).toBe(10 + 15 + 1);
  });
});
