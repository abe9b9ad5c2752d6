// Heat ahead: the decision on both sides of its numbers, what is the same heat, and a tent that warms.
import { describe, expect, it } from 'vitest';
import {
  followHeat,
  foreseeHeat,
  type HeatMemory,
  isHeatAhead,
  lookAhead,
  noHeatMemory,
} from '../../../shared/forecast/heat-ahead.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const NOON_MS = Date.parse('2026-04-08T10:00:00Z');

/** A reading a minute, through the memory. */
function follow(values: readonly number[], high: number | null = 28): HeatMemory {
  return values.reduce(
    (memory, value, i) => followHeat(memory, { timeMs: NOON_MS + i * MINUTE_MS, value }, high),
    noHeatMemory,
  );
}

const resting = Array.from({ length: 40 }, (_, i) => 25 + 0.02 * Math.sin(i * 2.1));

describe('the decision', () => {
  const cases: readonly [string, number, boolean, boolean, boolean][] = [
    ['a chance of 0.45 begins a warning', 0.45, false, false, true],
    ['one just below does not', 0.449, false, false, false],
    ['nor does any of the same heat', 1, true, false, false],
    ['a standing warning goes on at 0.1', 0.1, false, true, true],
    ['and is taken back below', 0.099, false, true, false],
    ['it also goes on in the same heat', 0.2, true, true, true],
  ];
  it.each(cases)('%s', (_, chance, isSameHeat, stands, expected) => {
    expect(isHeatAhead({ chance, isSameHeat }, stands)).toBe(expected);
  });
});

describe('looking ahead', () => {
  it('sees nothing before the first reading', () => {
    expect(lookAhead(noHeatMemory, 28)).toBeNull();
  });

  it('has little to fear while the tent rests, and warns minutes before a sudden sun takes it over the limit', () => {
    const rest = lookAhead(follow(resting), 28);
    expect(rest?.chance).toBeLessThan(0.05);
    const warming = [25.4, 25.9, 26.4, 26.9, 27.4, 27.9];
    const due = warming.findIndex((_, i) =>
      isHeatAhead(lookAhead(follow([...resting, ...warming.slice(0, i + 1)]), 28) ?? expect.fail(), false),
    );
    expect(due).toBeGreaterThanOrEqual(0);
    expect(due, 'two readings before 28.4').toBeLessThanOrEqual(3);
  });

  it('names the instant it expects, the same whatever the minute in which it is read', () => {
    const memory = follow([...resting, 25.4, 25.9, 26.4, 26.9, 27.4]);
    const { minutes, low, high } = foreseeHeat(memory.trend ?? expect.fail(), 28);
    const expected = lookAhead(memory, 28)?.expected();
    const asOfMs = memory.trend?.timeMs ?? 0;
    const instant = (ahead: number | null) => (ahead === null ? null : Math.round(asOfMs + ahead * MINUTE_MS));
    expect(expected).toEqual({
      ...{ atMs: instant(minutes), earliestMs: instant(low), latestMs: instant(high) },
      passedMs: null,
    });
    expect(minutes).toBeGreaterThan(0.5);
    expect(minutes).toBeLessThan(4);
  });

  it.each([
    ['at the limit nothing is passed', [27.8, 28], null],
    ['the first reading above it is the one', [27.8, 28.1, 28.4, 28.2], 1],
    ['back at it and above again counts anew', [28.1, 28, 28.3], 2],
    ['what was above it when it was first heard, nobody saw pass', [28.1, 28.4], null],
  ])('knows when the limit was passed: %s', (_why, values, nth) => {
    const isFirstHeard = nth === null && (values[0] ?? 0) > 28;
    const before = isFirstHeard ? [] : resting;
    const passedMs = nth === null ? null : NOON_MS + (before.length + nth) * MINUTE_MS;
    expect(lookAhead(follow([...before, ...values]), 28)?.expected().passedMs).toBe(passedMs);
  });

  it('calls it the same heat for half an hour after the limit was passed', () => {
    const passed = [...resting, 28.1];
    const since = (minutes: number) =>
      lookAhead(follow([...passed, ...Array.from({ length: minutes }, () => 27)]), 28)?.isSameHeat;
    expect([since(0), since(29), since(30)]).toEqual([true, true, false]);
    expect(lookAhead(follow([...resting, 28]), 28)?.isSameHeat, 'at the limit is not beyond it').toBe(false);
    expect(lookAhead(follow(passed, null), 28)?.isSameHeat, 'nothing is beyond where no limit holds').toBe(false);
  });

  it('does not move for a reading that is not later', () => {
    const memory = follow(resting);
    expect(followHeat(memory, { timeMs: memory.trend?.timeMs ?? 0, value: 40 }, 28)).toBe(memory);
  });
});
