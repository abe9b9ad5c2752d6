import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LevelFit } from '../../../shared/venting/fit-exchange.ts';
import { makeRateCurve } from '../../../shared/venting/rate-curve.ts';

function level(gapPercent: number, ratePerHour: number, standardError = 0.2): LevelFit {
  const interval = { low: ratePerHour, high: ratePerHour };
  return { gapPercent, ratePerHour, standardError, interval, r2: 0.99, readings: 100, windows: 1 };
}

function rateAt(levels: readonly LevelFit[], gapPercent: number): number {
  return makeRateCurve(levels)?.rateAt(gapPercent)?.ratePerHour ?? Number.NaN;
}

describe('between gaps that were tried', () => {
  const levels = [level(0, 1), level(20, 5), level(40, 11)];

  test.each([
    { gapPercent: 0, rate: 1 },
    { gapPercent: 20, rate: 5 },
    { gapPercent: 40, rate: 11 },
  ])('it passes through the rate at $gapPercent %', ({ gapPercent, rate }) => {
    expect(rateAt(levels, gapPercent)).toBeCloseTo(rate, 10);
    expect(makeRateCurve(levels)?.rateAt(gapPercent)?.standardError).toBeCloseTo(0.2, 10);
  });

  test('it follows the gap to the power 1.5: at 10 % of 0 to 20 %, 35 % of the way', () => {
    expect(rateAt(levels, 10)).toBeCloseTo(1 + 4 * 0.5 ** 1.5, 10);
  });

  test('what the power could be otherwise, 1 to 2, is in the error', () => {
    const error = makeRateCurve(levels)?.rateAt(10)?.standardError ?? 0;
    // Half of what lies between a share of 0.5 and one of 0.25 of four, and the noise of both levels.
    const noise = Math.hypot((1 - 0.5 ** 1.5) * 0.2, 0.5 ** 1.5 * 0.2);
    expect(error).toBeCloseTo(Math.hypot(noise, (0.5 - 0.25) * 2), 10);
  });
});

describe('beyond the widest gap that was tried', () => {
  const levels = [level(0, 1), level(20, 5), level(40, 12)];

  test('it goes on along the line from the narrowest to the widest, half as far again', () => {
    expect(rateAt(levels, 60)).toBeCloseTo(1 + 11 * 1.5 ** 1.5, 10);
    expect(makeRateCurve(levels)?.rateAt(61)).toBeNull();
    expect(makeRateCurve(levels)?.toPercent).toBe(60);
  });

  test('and is less and less sure', () => {
    const errors = [40, 45, 50, 60].map((gap) => makeRateCurve(levels)?.rateAt(gap)?.standardError ?? 0);
    expect(errors).toEqual([...errors].sort((a, b) => a - b));
    expect(errors.at(-1)).toBeGreaterThan(2);
  });

  test('a line that came out flat leaves room for a flow that grows with the gap', () => {
    const flat = makeRateCurve([level(18, 5), level(20, 4.9)])?.rateAt(30);
    expect(flat?.ratePerHour).toBeCloseTo(4.95, 10);
    const grown = 4.95 * 1.5 ** 1.5;
    expect(4.95 + 2 * (flat?.standardError ?? 0)).toBeGreaterThan(grown);
  });

  test('never beyond fully open', () => {
    expect(makeRateCurve([level(20, 3), level(80, 20)])?.toPercent).toBe(100);
  });

  test('nor below the narrowest', () => {
    expect(makeRateCurve([level(20, 3), level(80, 20)])?.rateAt(19)).toBeNull();
  });
});

describe('rates that fall as the gap opens', () => {
  test('by no more than chance are pooled: half-way where both are as sure', () => {
    const levels = [level(10, 5, 0.2), level(20, 4.6, 0.2), level(40, 9)];
    expect(rateAt(levels, 10)).toBeCloseTo(4.8, 10);
    expect(rateAt(levels, 20)).toBeCloseTo(4.8, 10);
    expect(rateAt(levels, 15)).toBeCloseTo(4.8, 10);
  });

  test('nearer to the surer of two', () => {
    expect(rateAt([level(10, 5, 0.1), level(20, 4.6, 0.2)], 10)).toBeCloseTo(5 - 0.4 / 5, 10);
  });

  test('pools on where the pooled rate is still above the next', () => {
    const levels = [level(10, 5), level(20, 5.4), level(30, 4.9), level(40, 9)];
    expect(rateAt(levels, 20)).toBeCloseTo((5.4 + 4.9) / 2, 10);
    expect(rateAt(levels, 10)).toBeCloseTo(5, 10);
  });

  test.each([
    { fall: 1.15, isCurve: true, why: 'each 2.9 standard errors from their mean' },
    { fall: 1.25, isCurve: false, why: 'each 3.1 of them' },
  ])('a fall of $fall with errors of 0.2: $why', ({ fall, isCurve }) => {
    expect(makeRateCurve([level(10, 5), level(20, 5 - fall)]) !== null).toBe(isCurve);
  });
});

test.each([
  { levels: [], why: 'no gap' },
  { levels: [level(20, 5)], why: 'one gap' },
])('no curve from $why', ({ levels }) => {
  expect(makeRateCurve(levels)).toBeNull();
});

test('wherever it answers it never falls, and its weights add up to the whole of one rate', () => {
  const anyLevel = fc.record({
    gap: fc.integer({ min: 0, max: 100 }),
    rate: fc.double({ min: 0.2, max: 60, noNaN: true }),
    error: fc.double({ min: 0.05, max: 5, noNaN: true }),
  });
  const anyLevels = fc.uniqueArray(anyLevel, { minLength: 2, maxLength: 6, selector: ({ gap }) => gap });
  fc.assert(
    fc.property(anyLevels, (drawn) => {
      const levels = drawn.sort((a, b) => a.gap - b.gap).map(({ gap, rate, error }) => level(gap, rate, error));
      const curve = makeRateCurve(levels);
      fc.pre(curve !== null);
      let before = 0;
      for (let gap = curve?.fromPercent ?? 0; gap <= (curve?.toPercent ?? 0); gap++) {
        const at = curve?.rateAt(gap);
        expect(at?.ratePerHour).toBeGreaterThanOrEqual(before - 1e-9);
        before = at?.ratePerHour ?? Number.NaN;
        const sum = (at?.weights ?? []).reduce((total, weight, i) => total + weight * (levels[i]?.ratePerHour ?? 0), 0);
        expect(sum).toBeCloseTo(before, 8);
      }
    }),
  );
});
