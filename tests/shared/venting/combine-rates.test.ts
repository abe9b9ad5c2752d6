import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { combineRates } from '../../../shared/venting/combine-rates.ts';

const estimate = (ratePerHour: number, rateError: number) => ({ ratePerHour, rateError });

describe('rates of several windows', () => {
  test('one comes back as it is', () => {
    expect(combineRates([estimate(5, 0.3)])).toEqual({ ratePerHour: 5, rateError: 0.3, weights: [1] });
  });

  test('two that agree within their errors are weighed by them: 1/0.1² against 1/0.2²', () => {
    const { ratePerHour, rateError, weights } = combineRates([estimate(5, 0.1), estimate(5.1, 0.2)]);
    expect(weights[0]).toBeCloseTo(0.8, 12);
    expect(ratePerHour).toBeCloseTo(5.02, 12);
    expect(rateError).toBeCloseTo(Math.sqrt(1 / 125), 12);
  });

  test('two that differ by far more than their errors count alike, and their difference is the error', () => {
    // For two estimates of equal variance v, d apart: τ² = d²/2 − v, and the variance of the mean is (v + τ²)/2 = d²/4.
    const { ratePerHour, rateError } = combineRates([estimate(4, 0.1), estimate(6, 0.1)]);
    expect(ratePerHour).toBeCloseTo(5, 12);
    expect(rateError).toBeCloseTo(1, 12);
  });

  test('exact fits can be combined too', () => {
    expect(combineRates([estimate(4, 0), estimate(4, 0)]).ratePerHour).toBe(4);
  });

  test('the result lies among the estimates, its weights add up to 1, and no order matters', () => {
    const one = fc.record({
      ratePerHour: fc.double({ min: 0.1, max: 50, noNaN: true }),
      rateError: fc.double({ min: 0.01, max: 5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 6 }), (estimates) => {
        const combined = combineRates(estimates);
        const rates = estimates.map(({ ratePerHour }) => ratePerHour);
        expect(combined.ratePerHour).toBeGreaterThanOrEqual(Math.min(...rates) - 1e-9);
        expect(combined.ratePerHour).toBeLessThanOrEqual(Math.max(...rates) + 1e-9);
        expect(combined.weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 10);
        expect(combineRates(estimates.toReversed()).rateError).toBeCloseTo(combined.rateError, 8);
      }),
    );
  });
});
