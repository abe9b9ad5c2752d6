// Newcombe 1998, Statistics in Medicine 17:857–872, method 3 (Wilson's score interval without continuity correction): its examples, the printed
// limits from memory; the same to all digits by SciPy 1.17.1, binomtest(...).proportion_ci(method='wilson').
import { expect, test } from 'vitest';
import { wilsonInterval } from '../../shared/learning/wilson-interval.ts';

test.each([
  { count: 81, of: 263, low: 0.2553, high: 0.3662, scipy: [0.2552885198782742, 0.36620957698280004] },
  { count: 15, of: 148, low: 0.0624, high: 0.1605, scipy: [0.06238639953073629, 0.16048724172330803] },
  { count: 0, of: 20, low: 0, high: 0.1611, scipy: [0, 0.16112515805281935] },
  { count: 1, of: 29, low: 0.0061, high: 0.1718, scipy: [0.006113214292762667, 0.17175521879320282] },
])('$count of $of: $low to $high', ({ count, of, low, high, scipy }) => {
  const interval = wilsonInterval(count, of);
  expect(interval?.low.toFixed(4)).toBe(low.toFixed(4));
  expect(interval?.high.toFixed(4)).toBe(high.toFixed(4));
  expect(interval?.low).toBeCloseTo(scipy[0] ?? Number.NaN, 12);
  expect(interval?.high).toBeCloseTo(scipy[1] ?? Number.NaN, 12);
});
