// Kendall's τ-b and its exact p by SciPy 1.17.1: kendalltau(method='exact') without ties; with ties all orders counted (itertools) or
// permutation_test with 50 000 draws.
import { describe, expect, test } from 'vitest';
import { rankPValue } from '../../shared/learning/rank-p-value.ts';
import { kendallTau } from '../../shared/learning/rank-pairs.ts';

const oneTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);

describe('exact', () => {
  test.each([
    { xs: oneTo(6), ys: [2, 1, 4, 3, 6, 5], tau: 0.6, p: 0.1361111111111111, why: 'six, every order tried' },
    {
      xs: [1, 2, 2, 4, 5, 6, 7],
      ys: [1, 1, 3, 2, 5, 5, 6],
      tau: 0.8207826816681232,
      p: 60 / 5040,
      why: 'seven with ties, every order tried',
    },
    {
      xs: [12, 3, 45, 23, 8, 31, 17, 28, 50, 41, 5, 36],
      ys: [0.05, 0.02, 0.12, 0.03, 0.04, 0.07, 0.01, 0.09, 0.06, 0.11, 0.08, 0.1],
      tau: 0.4848484848484848,
      p: 0.031050242838437284,
      why: 'twelve, counted by recursion',
    },
    {
      xs: oneTo(25),
      ys: [18, 50, 96, 55, 28, 15, 16, 31, 60, 2, 59, 29, 13, 11, 23, 49, 89, 42, 9, 91, 86, 95, 17, 54, 4],
      tau: 0.01333333333333333,
      p: 0.9447431182315829,
      why: 'twenty-five without any order',
    },
  ])('$why: τ = $tau, p = $p', ({ xs, ys, tau, p }) => {
    expect(kendallTau(xs, ys)).toBeCloseTo(tau, 12);
    expect(rankPValue(xs, ys)).toBeCloseTo(p, 10);
  });
});

test('twelve with ties: within 0.01 of the p of 50 000 drawn orders, 0.430', () => {
  const xs = [0, 0, 0, 1, 2, 2, 3, 5, 5, 8, 9, 12];
  const ys = [0.05, 0.01, 0.09, 0.03, 0.03, 0.08, 0.05, 0.04, 0.02, 0.05, 0.09, 0.06];
  expect(kendallTau(xs, ys)).toBeCloseTo(0.19672131147540986, 12);
  expect(Math.abs(rankPValue(xs, ys) - 0.42991)).toBeLessThan(0.01);
});
