import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutLine, meanAboveZero, shareAboveZero, valueAt } from '../../../shared/exposure/straight-line.ts';

describe('a straight line against zero', () => {
  it.each([
    ['all above', 1, 3, 1, 2],
    ['all below', -1, -3, 0, 0],
    ['rising through in the middle', -1, 1, 0.5, 0.25],
    ['falling through at a quarter', 1, -3, 0.25, 0.125],
    ['rising from zero', 0, 2, 1, 1],
    ['falling to zero', 2, 0, 1, 1],
    ['rising to zero', -2, 0, 0, 0],
    ['lying on zero is not above it', 0, 0, 0, 0],
  ])('%s: from %d to %d', (_why, a, b, share, mean) => {
    expect(shareAboveZero(a, b)).toBe(share);
    expect(meanAboveZero(a, b)).toBe(mean);
  });

  const ends = fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true }));

  it('is the same read backwards', () => {
    fc.assert(
      fc.property(ends, ([a, b]) => {
        expect(shareAboveZero(a, b)).toBe(shareAboveZero(b, a));
        expect(meanAboveZero(a, b)).toBe(meanAboveZero(b, a));
      }),
    );
  });

  it('has its mean in the part above and the part below together', () => {
    fc.assert(
      fc.property(ends, ([a, b]) => {
        expect(meanAboveZero(a, b) - meanAboveZero(-a, -b)).toBeCloseTo((a + b) / 2, 9);
      }),
    );
  });
});

describe('a piece of a line', () => {
  const line = { fromMs: 1000, toMs: 2000, fromValue: 20, toValue: 30 };

  it('has its value on the line', () => {
    expect([1000, 1250, 2000].map((ms) => valueAt(line, ms))).toEqual([20, 22.5, 30]);
  });

  it.each([
    ['wholly inside', 0, 3000, line],
    ['cut at both ends', 1100, 1900, { fromMs: 1100, toMs: 1900, fromValue: 21, toValue: 29 }],
    ['before', 0, 1000, null],
    ['after', 2000, 3000, null],
  ])('%s', (_why, fromMs, toMs, expected) => {
    expect(cutLine(line, fromMs, toMs)).toEqual(expected);
  });
});
