import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { wilsonInterval, Z_95 } from '../../../shared/learning/wilson-interval.ts';

const counts = fc
  .integer({ min: 1, max: 20_000 })
  .chain((plants) => fc.record({ plants: fc.constant(plants), taken: fc.integer({ min: 0, max: plants }) }));

/** The ends by their definition, (share − p)² = z²·p(1 − p)/n, found by halving on either side of the share. */
function byHalving(taken: number, plants: number, z: number): { low: number; high: number } {
  const share = taken / plants;
  const isInside = (p: number) => (share - p) ** 2 <= (z * z * p * (1 - p)) / plants;
  const halve = (inside: number, outside: number): number => {
    let [near, far] = [inside, outside];
    for (let i = 0; i < 60; i++) {
      const middle = (near + far) / 2;
      if (isInside(middle)) near = middle;
      else far = middle;
    }
    return near;
  };
  // At a share of 0 or 1 the definition holds there with both sides zero.
  return { low: share === 0 ? 0 : halve(share, 0), high: share === 1 ? 1 : halve(share, 1) };
}

describe('the interval of a take', () => {
  test('has the ends that solve its definition, for any count and confidence', () => {
    fc.assert(
      fc.property(counts, fc.double({ min: 0.5, max: 4, noNaN: true }), ({ taken, plants }, z) => {
        const interval = wilsonInterval(taken, plants, z);
        const { low, high } = byHalving(taken, plants, z);
        expect(interval?.low).toBeCloseTo(low, 9);
        expect(interval?.high).toBeCloseTo(high, 9);
      }),
    );
  });

  test('holds the share, lies in 0–1, and turns round when taken and lost change places', () => {
    fc.assert(
      fc.property(counts, ({ taken, plants }) => {
        const took = wilsonInterval(taken, plants);
        const lost = wilsonInterval(plants - taken, plants);
        if (took === null || lost === null) throw new Error('a possible count has an interval');
        expect(took.low).toBeGreaterThanOrEqual(0);
        expect(took.low).toBeLessThanOrEqual(took.share);
        expect(took.high).toBeGreaterThanOrEqual(took.share);
        expect(took.high).toBeLessThanOrEqual(1);
        expect(lost.low).toBeCloseTo(1 - took.high, 12);
      }),
    );
  });

  test('a hundred times the plants, about a tenth of the width', () => {
    const width = (plants: number) => {
      const interval = wilsonInterval(0.9 * plants, plants);
      return (interval?.high ?? 0) - (interval?.low ?? 0);
    };
    expect(width(100) / width(10_000)).toBeCloseTo(10, 0);
  });

  test.each([
    { taken: 0, plants: 50, low: 0, high: 0.0713, why: 'none taken: the low end is exactly 0' },
    { taken: 50, plants: 50, low: 0.9287, high: 1, why: 'all taken: the high end is exactly 1' },
  ])('$taken of $plants: $why', ({ taken, plants, low, high }) => {
    const interval = wilsonInterval(taken, plants);
    expect(interval?.low).toBeCloseTo(low, 4);
    expect(interval?.high).toBeCloseTo(high, 4);
  });

  test.each([
    { taken: 0, plants: 0, why: 'no plants' },
    { taken: 11, plants: 10, why: 'more taken than grafted' },
    { taken: -1, plants: 10, why: 'a negative count' },
    { taken: Number.NaN, plants: 10, why: 'not a number' },
  ])('there is none for $why', ({ taken, plants }) => {
    expect(wilsonInterval(taken, plants)).toBeNull();
  });

  test('is one of 95 % unless said otherwise', () => {
    expect(wilsonInterval(90, 100)).toEqual(wilsonInterval(90, 100, Z_95));
    expect(Z_95).toBeCloseTo(1.96, 3);
  });
});
