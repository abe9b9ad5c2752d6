import { expect, test } from 'vitest';
import { backOffMs } from '../../../server/notify/back-off.ts';

test.each([
  ['first', 0, 5_000],
  ['second', 1, 10_000],
  ['third', 2, 20_000],
  ['sixth', 5, 160_000],
  ['seventh would be 320 s: five minutes', 6, 300_000],
  ['thousandth', 999, 300_000],
])('the pause after the %s failure', (_, triesBefore, ms) => {
  expect(backOffMs(triesBefore, 0)).toBe(ms);
});

test('chance makes a pause shorter by less than a quarter, never longer', () => {
  expect(backOffMs(2, 0.5)).toBe(17_500);
  expect(backOffMs(2, 0.999_999)).toBe(15_000);
});
