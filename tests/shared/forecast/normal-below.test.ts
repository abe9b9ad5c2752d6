// The normal distribution function against published values.
import { describe, expect, it } from 'vitest';
import { normalBelow } from '../../../shared/forecast/normal-below.ts';

// Φ(z) of the usual tables (Abramowitz & Stegun, table 26.1).
const table: readonly [number, number][] = [
  [0, 0.5],
  [0.5, 0.69146246],
  [1, 0.84134475],
  [1.2815516, 0.9],
  [1.959964, 0.975],
  [3, 0.9986501],
  [4, 0.99996833],
];

describe('normalBelow', () => {
  it.each(table)('of %f is %f, and of its mirror the rest', (z, share) => {
    expect(normalBelow(z)).toBeCloseTo(share, 6);
    expect(normalBelow(-z)).toBeCloseTo(1 - share, 6);
  });

  it('rises from nothing to one', () => {
    let before = -1;
    for (let z = -40; z <= 40; z += 0.25) {
      const share = normalBelow(z);
      expect(share).toBeGreaterThanOrEqual(before);
      before = share;
    }
    expect([normalBelow(-40), normalBelow(40)]).toEqual([0, 1]);
  });
});
