import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rankPValue, smallestPValue } from '../../../shared/learning/rank-p-value.ts';
import { countPairs, kendallTau, tieGroups } from '../../../shared/learning/rank-pairs.ts';

const lists = (min: number, max: number, values = 1000) =>
  fc.integer({ min, max }).chain((length) => {
    const list = fc.array(fc.integer({ min: 0, max: values }), { minLength: length, maxLength: length });
    return fc.record({ xs: list, ys: list });
  });

describe('pairs', () => {
  test('are counted by hand for four batches', () => {
    // Pairs of (1,1) (2,3) (3,2) (3,4): five the same way or opposite, one tied in the first.
    expect(countPairs([1, 2, 3, 3], [1, 3, 2, 4])).toEqual({ concordant: 4, discordant: 1, tied: 1 });
  });

  test('make τ 1 in order, −1 in reverse, and nothing where a list is constant', () => {
    expect(kendallTau([1, 2, 3, 9], [10, 20, 30, 31])).toBe(1);
    expect(kendallTau([1, 2, 3, 9], [4, 3, 2, 1])).toBe(-1);
    expect(kendallTau([1, 2, 3, 9], [5, 5, 5, 5])).toBeNull();
    expect(kendallTau([], [])).toBeNull();
  });

  test('do not mind which list comes first, nor any stretching of a scale', () => {
    fc.assert(
      fc.property(lists(2, 20, 30), ({ xs, ys }) => {
        expect(kendallTau(ys, xs)).toBe(kendallTau(xs, ys));
        expect(
          kendallTau(
            xs.map((x) => Math.exp(x / 10)),
            ys,
          ),
        ).toBe(kendallTau(xs, ys));
        const turned = kendallTau(
          xs.map((x) => -x),
          ys,
        );
        expect(turned === null ? null : 0 - turned).toEqual(kendallTau(xs, ys));
      }),
    );
  });

  test('ties come in groups', () => {
    expect(tieGroups([3, 1, 3, 3, 2, 1])).toEqual([3, 2, 1]);
  });
});

describe('p', () => {
  test.each([
    { batches: 1, p: 1 },
    { batches: 2, p: 1 },
    { batches: 4, p: 2 / 24 },
    { batches: 5, p: 2 / 120 },
    { batches: 8, p: 2 / 40_320 },
  ])('of $batches batches in perfect order is the smallest there is: 2 of all orders', ({ batches, p }) => {
    const inOrder = Array.from({ length: batches }, (_, i) => i);
    expect(smallestPValue(batches)).toBeCloseTo(p, 14);
    if (batches > 1) expect(rankPValue(inOrder, inOrder)).toBeCloseTo(p, 14);
  });

  test('is 1 where a list is constant', () => {
    expect(rankPValue([1, 2, 3, 4, 5], [7, 7, 7, 7, 7])).toBe(1);
  });

  test('counted by recursion from nine batches on goes on from what is tried one by one below', () => {
    // The most one-sided but one order of nine: a single discordant pair, so 2 · (1 + 8) of 9! orders are as far.
    const inOrder = Array.from({ length: 9 }, (_, i) => i);
    const oneSwapped = [1, 0, 2, 3, 4, 5, 6, 7, 8];
    expect(rankPValue(inOrder, oneSwapped)).toBeCloseTo((2 * 9) / 362_880, 14);
  });

  test.each([
    { batches: 60, nearness: 0.03, why: 'the last that is counted, within 3 % of the normal curve' },
    { batches: 61, nearness: 1e-4, why: 'the first that is the normal curve' },
  ])('of $batches batches: $why', ({ batches, nearness }) => {
    const xs = Array.from({ length: batches }, (_, i) => i);
    const ys = xs.map((i) => i + (((i * 37) % 61) / 61) * 250);
    const { concordant, discordant } = countPairs(xs, ys);
    const deviation = Math.sqrt((batches * (batches - 1) * (2 * batches + 5)) / 18);
    const byCurve = 2 * normalTail((Math.abs(concordant - discordant) - 1) / deviation);
    expect(byCurve).toBeGreaterThan(0.001);
    expect(byCurve).toBeLessThan(0.2);
    expect(Math.abs(rankPValue(xs, ys) / byCurve - 1)).toBeLessThan(nearness);
  });

  test('lies in 0–1, is the same in both directions and for either list first, whatever the ties', () => {
    fc.assert(
      fc.property(lists(2, 14, 8), ({ xs, ys }) => {
        const p = rankPValue(xs, ys);
        expect(p).toBeGreaterThan(0);
        expect(p).toBeLessThanOrEqual(1);
        expect(rankPValue(ys, xs)).toBeCloseTo(p, 12);
        expect(
          rankPValue(
            xs,
            ys.map((y) => -y),
          ),
        ).toBeCloseTo(p, 12);
      }),
      { numRuns: 40 },
    );
  });
});

/** The upper tail of the normal curve by Simpson's rule out to ten standard deviations. */
function normalTail(z: number): number {
  const count = 2000;
  const h = (10 - z) / count;
  let sum = 0;
  for (let i = 0; i <= count; i++) {
    const weight = i === 0 || i === count ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-((z + i * h) ** 2) / 2);
  }
  return (sum * h) / 3 / Math.sqrt(2 * Math.PI);
}
