import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TimedValue } from '../../../shared/exposure/segments.ts';
import { type OverlaidBatch, type OverlayGrid, overlayBatches } from '../../../shared/learning/overlay.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

const SILENCE_MS = 15 * MINUTE_MS;
const grid: OverlayGrid = { fromHours: 0, toHours: 4, stepHours: 1 };

/** A batch closed at `closedMs` with a value every ten minutes from `fromHours` to `toHours` after it. */
function batch(
  id: string,
  closedMs: number,
  valueAt: (hours: number) => number,
  { fromHours, toHours }: { fromHours: number; toHours: number } = { fromHours: 0, toHours: 4 },
): OverlaidBatch {
  const count = Math.round((toHours - fromHours) * 6);
  const values = Array.from({ length: count + 1 }, (_, i): TimedValue => {
    const hours = fromHours + i / 6;
    return { timeMs: closedMs + Math.round(hours * HOUR_MS), value: valueAt(hours) };
  });
  return { id, closedMs, silenceMs: SILENCE_MS, values };
}

describe('batches laid over each other', () => {
  const spring = batch('spring', 1e12, (hours) => 90 + hours);
  const summer = batch('summer', 2e12 + 12_345, (hours) => 80 + 2 * hours);
  const autumn = batch('autumn', 3e12, () => 99);

  test('meet at their closing, whenever that was', () => {
    const overlay = overlayBatches([spring, summer, autumn], grid);
    expect(overlay.hours).toEqual([0.5, 1.5, 2.5, 3.5]);
    expect(overlay.batches.map(({ id }) => id)).toEqual(['spring', 'summer', 'autumn']);
    expect(overlay.median[0]).toBeCloseTo(90.5, 6);
    expect(overlay.low[0]).toBeCloseTo(81, 4);
    expect(overlay.high[0]).toBeCloseTo(99, 6);
    expect(overlay.median[3]).toBeCloseTo(93.5, 6);
    expect(overlay.count).toEqual([3, 3, 3, 3]);
  });

  test('of two the median is the mean', () => {
    expect(overlayBatches([spring, autumn], grid).median[0]).toBeCloseTo((90.5 + 99) / 2, 6);
  });

  test('a cell holds the mean of its straight lines, not of its readings', () => {
    // Readings crowd at the end of the hour; by time the mean of a line from 0 to 60 is 30.
    const values = [0, 50, 52, 54, 56, 58, 60].map((minute) => ({ timeMs: minute * MINUTE_MS, value: minute }));
    const overlay = overlayBatches([{ id: 'a', closedMs: 0, silenceMs: HOUR_MS, values }], { ...grid, toHours: 1 });
    expect(overlay.median[0]).toBeCloseTo(30, 10);
  });

  test('time before the closing can be laid over too', () => {
    const early = batch('early', 1e12, (hours) => hours, { fromHours: -2, toHours: 1 });
    const overlay = overlayBatches([early], { fromHours: -2, toHours: 2, stepHours: 2 });
    expect(overlay.hours).toEqual([-1, 1]);
    expect(overlay.median[0]).toBeCloseTo(-1, 6);
    expect(overlay.median[1]).toBeCloseTo(0.5, 6);
  });
});

describe('gaps', () => {
  test('stay gaps, in the batch and in what is made of it', () => {
    const short = batch('short', 0, () => 90, { fromHours: 0, toHours: 2 });
    const long = batch('long', 0, () => 80);
    const overlay = overlayBatches([short, long], grid);
    expect(overlay.batches[0]?.values).toEqual([90, 90, null, null]);
    expect(overlay.count).toEqual([2, 2, 1, 1]);
    expect(overlay.median).toEqual([85, 85, 80, 80]);
  });

  test.each([
    { minutes: 30, value: 90, why: 'half an hour known of one hour is enough' },
    { minutes: 29, value: null, why: 'less is a gap' },
  ])('$why', ({ minutes, value }) => {
    const values = Array.from({ length: minutes + 1 }, (_, i) => ({ timeMs: i * MINUTE_MS, value: 90 }));
    const overlay = overlayBatches([{ id: 'a', closedMs: 0, silenceMs: SILENCE_MS, values }], { ...grid, toHours: 1 });
    expect(overlay.median).toEqual([value]);
  });

  test('a silence longer than allowed is not drawn across', () => {
    const at = (minute: number) => ({ timeMs: minute * MINUTE_MS, value: 90 });
    const over = (values: TimedValue[]) =>
      overlayBatches([{ id: 'a', closedMs: 0, silenceMs: SILENCE_MS, values }], { ...grid, toHours: 1 }).median;
    expect(over([at(0), at(15), at(30), at(45), at(60)])).toEqual([90]);
    expect(over([at(0), at(16), at(32), at(48), at(64)])).toEqual([null]);
  });

  test.each([
    { batches: [], why: 'no batches' },
    { batches: [batch('empty', 0, () => 0, { fromHours: 9, toHours: 9 })], why: 'a batch without readings there' },
  ])('$why: nothing to show', ({ batches }) => {
    const overlay = overlayBatches(batches, grid);
    const nothing = [null, null, null, null];
    expect(overlay).toMatchObject({ median: nothing, low: nothing, high: nothing, count: [0, 0, 0, 0] });
  });

  test('a grid without a whole cell has none', () => {
    expect(overlayBatches([], { fromHours: 0, toHours: 0.9, stepHours: 1 }).hours).toEqual([]);
  });
});

test('every column is as long as the grid, and the median lies in the range, whatever is known', () => {
  const value = fc.record({
    minute: fc.integer({ min: -60, max: 300 }),
    value: fc.double({ min: 0, max: 100, noNaN: true }),
  });
  const anyBatch = fc.uniqueArray(value, { maxLength: 40, selector: ({ minute }) => minute });
  fc.assert(
    fc.property(fc.array(anyBatch, { maxLength: 5 }), (drawn) => {
      const batches = drawn.map((values, i) => ({
        id: String(i),
        closedMs: 0,
        silenceMs: SILENCE_MS,
        values: values
          .sort((a, b) => a.minute - b.minute)
          .map((one) => ({ timeMs: one.minute * MINUTE_MS, value: one.value })),
      }));
      const overlay = overlayBatches(batches, grid);
      for (const column of [overlay.median, overlay.low, overlay.high, overlay.count]) expect(column).toHaveLength(4);
      overlay.median.forEach((median, cell) => {
        expect(median === null).toBe(overlay.count[cell] === 0);
        if (median === null) return;
        expect(median).toBeGreaterThanOrEqual(overlay.low[cell] ?? Number.NaN);
        expect(median).toBeLessThanOrEqual(overlay.high[cell] ?? Number.NaN);
      });
    }),
  );
});
