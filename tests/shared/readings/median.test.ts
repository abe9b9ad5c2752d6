import { describe, expect, it } from 'vitest';
import { median } from '../../../shared/readings/median.ts';

describe('median', () => {
  it.each([
    ['of nothing', [], null],
    ['of one', [3], 3],
    ['of two', [10, 3], 6.5],
    ['of three, whatever their order', [10, 2, 3], 3],
    ['of four', [9, 10, 2, 3], 6],
    ['sorts numbers as numbers', [100, 9, 20], 20],
  ])('%s', (_why, values, middle) => {
    expect(median(values)).toBe(middle);
  });

  it('leaves its input as it was', () => {
    const values = [3, 1, 2];
    median(values);
    expect(values).toEqual([3, 1, 2]);
  });
});
