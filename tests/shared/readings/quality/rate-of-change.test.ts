import { describe, expect, it } from 'vitest';
import { emptyRateMemory, rateOfChange } from '../../../../shared/readings/quality/rate-of-change.ts';
import { MINUTE_MS, SECOND_MS } from '../../../../shared/units.ts';

const limits = { perMinute: 3, shortestMs: MINUTE_MS };

function flagAfter(elapsedMs: number, from: number | null, to: number | null) {
  const first = rateOfChange(emptyRateMemory, { timeMs: 0, value: from }, limits);
  return rateOfChange(first.memory, { timeMs: elapsedMs, value: to }, limits).flag;
}

describe('rate of change', () => {
  it.each([
    ['as fast as allowed', MINUTE_MS, 22, 25, 1],
    ['faster', MINUTE_MS, 22, 25.1, 3],
    ['faster downwards', MINUTE_MS, 22, 18.9, 3],
    ['the same step over two minutes', 2 * MINUTE_MS, 22, 25.1, 1],
    ['a step of resolution within a second is no rate', SECOND_MS, 22, 22.5, 1],
    ['a leap within a second is', SECOND_MS, 22, 25.1, 3],
    ['nothing to compare with', MINUTE_MS, null, 80, 1],
    ['nothing measured', MINUTE_MS, 22, null, 9],
  ])('%s', (_why, elapsedMs, from, to, flag) => {
    expect(flagAfter(elapsedMs, from, to)).toBe(flag);
  });

  it('believes a new level that stays', () => {
    const leap = rateOfChange({ last: { timeMs: 0, value: 22 } }, { timeMs: MINUTE_MS, value: 30 }, limits);
    const stay = rateOfChange(leap.memory, { timeMs: 2 * MINUTE_MS, value: 30 }, limits);
    expect([leap.flag, stay.flag]).toEqual([3, 1]);
  });
});
