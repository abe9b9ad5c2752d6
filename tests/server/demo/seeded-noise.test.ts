// The demo's noise: repeatable, spread as it says.
import { describe, expect, it } from 'vitest';
import { createNoise, noiseAt, smoothNoiseAt } from '../../../server/demo/seeded-noise.ts';

const draw = (seed: number, count: number): number[] => {
  const noise = createNoise(seed);
  return Array.from({ length: count }, noise.uniform);
};

describe('createNoise', () => {
  it('repeats for the same seed and differs for another', () => {
    expect(draw(5, 20)).toEqual(draw(5, 20));
    expect(draw(6, 20)).not.toEqual(draw(5, 20));
  });

  it('spreads evenly over [0, 1)', () => {
    const tenths = new Array<number>(10).fill(0);
    for (const value of draw(1, 10_000)) {
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThan(1);
      tenths[Math.floor(value * 10)] = (tenths[Math.floor(value * 10)] ?? 0) + 1;
    }
    // 1,000 expected in each tenth, standard deviation 30.
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });

  it('draws normal values with mean 0 and deviation 1, cut off at 3', () => {
    const noise = createNoise(2);
    const values = Array.from({ length: 10_000 }, noise.normal);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
    expect(Math.abs(mean)).toBeLessThan(0.05);
    expect(deviation).toBeGreaterThan(0.95);
    expect(deviation).toBeLessThan(1.05);
    expect(Math.max(...values.map(Math.abs))).toBeLessThanOrEqual(3);
  });
});

describe('smoothNoiseAt', () => {
  it('passes through the noise of the whole numbers and stays between its neighbours', () => {
    expect(smoothNoiseAt(3, 12)).toBeCloseTo(noiseAt(3, 12), 12);
    const [left, right] = [noiseAt(3, -5), noiseAt(3, -4)];
    expect(smoothNoiseAt(3, -4.5)).toBeCloseTo((left + right) / 2, 12);
  });
});
