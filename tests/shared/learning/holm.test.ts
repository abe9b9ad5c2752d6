import fc from 'fast-check';
import { expect, test } from 'vitest';
import { holmAdjusted } from '../../../shared/learning/holm.ts';

// By hand, after the definition: the smallest of m times m, the next times m − 1, and never below one before it.
test.each([
  {
    ps: [0.01, 0.04, 0.03, 0.005],
    adjusted: [0.03, 0.06, 0.06, 0.02],
    why: 'four, the last held up by the one before',
  },
  { ps: [0.2], adjusted: [0.2], why: 'one question needs no correction' },
  { ps: [0.5, 0.4], adjusted: [0.8, 0.8], why: 'two that say nothing' },
  { ps: [0.7, 0.6], adjusted: [1, 1], why: 'never above 1' },
  { ps: [], adjusted: [], why: 'nothing asked' },
])('$ps → $adjusted: $why', ({ ps, adjusted }) => {
  const result = holmAdjusted(ps);
  expect(result).toHaveLength(adjusted.length);
  for (const [i, p] of result.entries()) expect(p).toBeCloseTo(adjusted[i] ?? Number.NaN, 12);
});

test('an adjusted p is at least its own, at most m times it, keeps the order, and does not mind the order of asking', () => {
  const p = fc.double({ min: 0.0001, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.array(p, { minLength: 1, maxLength: 8 }), (ps) => {
      const adjusted = holmAdjusted(ps);
      ps.forEach((own, i) => {
        expect(adjusted[i]).toBeGreaterThanOrEqual(own);
        expect(adjusted[i]).toBeLessThanOrEqual(Math.min(1, own * ps.length) + 1e-12);
        ps.forEach((other, j) => {
          if (own < other) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j] ?? 0);
        });
      });
      expect(holmAdjusted(ps.toReversed())).toEqual(adjusted.toReversed());
    }),
  );
});
