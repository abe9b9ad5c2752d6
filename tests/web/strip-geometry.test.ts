// Where things lie on the strip: lanes, labels, day cells, gaps, windows.
import { describe, expect, test } from 'vitest';
import { dayCells } from '../../web/strip/healing-days.ts';
import { chartLayout, labelStep, labelValues, rowLayout, scaleForLane, widenRange } from '../../web/strip/lanes.ts';
import { isolatedIndices, runsWhere } from '../../web/strip/strip-data.ts';
import { keepInside, lastHours, pan, pinch, shortestMs, zoom } from '../../web/strip/zoom.ts';

const hour = 3_600_000;

describe('a value lands in its lane', () => {
  const share = (value: number, [min, max]: readonly [number, number]) => (max - value) / (max - min);
  test.each([
    ['humidity of a row', rowLayout.humidity, { low: 50, high: 100 }],
    ['temperature of a row', rowLayout.temperature, { low: 16, high: 32 }],
    ['humidity of a chart', chartLayout.humidity, { low: 30, high: 100 }],
    ['a lane over the whole height', { top: 0, bottom: 1 }, { low: 0, high: 10 }],
  ])('%s: the high end at its top, the low end at its bottom', (_, lane, range) => {
    const scale = scaleForLane(range, lane);
    expect(share(range.high, scale)).toBeCloseTo(lane.top, 10);
    expect(share(range.low, scale)).toBeCloseTo(lane.bottom, 10);
  });

  test.each([rowLayout, chartLayout])('the lanes of a $kind do not touch each other', (layout) => {
    const { humidity, marks, temperature } = layout;
    expect(humidity.bottom).toBeLessThan(marks.top);
    expect(marks.bottom).toBeLessThan(temperature.top);
    expect(temperature.bottom).toBeLessThanOrEqual(1);
  });
});

describe('a range widens so that a spike is never cut off', () => {
  const base = { low: 16, high: 32 };
  test.each<[(number | null)[], typeof base, string]>([
    [[20, 30], base, 'inside: nothing changes'],
    [[16, 32], base, 'exactly the ends: nothing changes'],
    [[15.9], { low: 12, high: 32 }, 'just below: the next step down'],
    [[32.1], { low: 16, high: 36 }, 'just above: the next step up'],
    [[null], base, 'a gap says nothing'],
  ])('%j -> %j (%s)', (column, range) => {
    expect(widenRange(base, [column], 4)).toEqual(range);
  });
});

test('labels are the multiples inside a range, ends included', () => {
  expect(labelValues({ low: 50, high: 100 }, 20)).toEqual([60, 80, 100]);
  expect(labelValues({ low: 16, high: 24 }, 4)).toEqual([16, 20, 24]);
});

describe('labels are as close as there is room for', () => {
  const steps = [5, 10, 20];
  test.each([
    [{ low: 60, high: 85 }, 5, 'six labels: just enough room'],
    [{ low: 60, high: 90 }, 10, 'seven would be one too many: every second'],
    [{ low: 60.8, high: 89.6 }, 5, '16 to 32 °C in °F: 65, 70, … 85'],
    [{ low: 0, high: 500 }, 20, 'never enough room: the widest'],
  ])('%j: every %i (%s)', (range, step) => {
    expect(labelStep(range, steps, 6)).toBe(step);
  });
});

describe('healing days are cells of 24 hours from closing', () => {
  const closed = 1_000_000;
  const day = 86_400;
  test('the first cell begins at closing, not at midnight', () => {
    expect(dayCells(closed, closed - 7_200, closed + day)[0]).toEqual({ day: 1, fromSec: closed, toSec: closed + day });
  });
  test('a window that ends exactly with a day does not show the next', () => {
    expect(dayCells(closed, closed, closed + 2 * day).map((cell) => cell.day)).toEqual([1, 2]);
    expect(dayCells(closed, closed, closed + 2 * day + 1).map((cell) => cell.day)).toEqual([1, 2, 3]);
  });
  test('a window later on begins with its own day', () => {
    expect(dayCells(closed, closed + 4.5 * day, closed + 4.6 * day).map((cell) => cell.day)).toEqual([5]);
  });
  test('a chamber that is not closed has no days', () => {
    expect(dayCells(null, 0, day)).toEqual([]);
  });
});

test('a value alone between two gaps is found, so that it can be shown as a point', () => {
  expect(isolatedIndices([1, null, 2, null, 3, 4, null, 5])).toEqual([0, 2, 7]);
  expect(isolatedIndices([1, 2, 3])).toEqual([]);
});

test('runs are unbroken and end before the first index that fails', () => {
  const flags = [true, true, false, true];
  expect(runsWhere(4, (index) => flags[index] === true)).toEqual([
    { from: 0, to: 2 },
    { from: 3, to: 4 },
  ]);
});

describe('the window of a chart', () => {
  const whole = { fromMs: 0, toMs: 100 * hour };
  test('"last 6 h" is six hours long and shows a little of what comes', () => {
    const window = lastHours(50 * hour, 6);
    expect(window.toMs - window.fromMs).toBe(6 * hour);
    expect(window.toMs).toBeGreaterThan(50 * hour);
  });
  test('moving stops at the ends without changing its length', () => {
    const window = { fromMs: 2 * hour, toMs: 8 * hour };
    expect(pan(window, -1, whole)).toEqual({ fromMs: 0, toMs: 6 * hour });
    expect(pan({ fromMs: 93 * hour, toMs: 99 * hour }, 1, whole)).toEqual({ fromMs: 94 * hour, toMs: 100 * hour });
  });
  test('zooming keeps the instant under the anchor where it is', () => {
    const closer = zoom({ fromMs: 40 * hour, toMs: 60 * hour }, 0.5, 55 * hour, whole);
    expect(closer).toEqual({ fromMs: 47.5 * hour, toMs: 57.5 * hour });
  });
  test('it never gets shorter than ten minutes nor longer than everything', () => {
    const least = zoom({ fromMs: 10 * hour, toMs: 10 * hour + shortestMs }, 0.5, 10 * hour, whole);
    expect(least.toMs - least.fromMs).toBe(shortestMs);
    expect(zoom(whole, 2, 50 * hour, whole)).toEqual(whole);
  });
  test('two fingers that part keep what was under them under them', () => {
    const window = { fromMs: 40 * hour, toMs: 50 * hour };
    // 100 px are an hour: the fingers lie on 43 h and 45 h, and part to twice their distance.
    expect(pinch(window, [300, 500], [200, 600], 1000, whole)).toEqual({ fromMs: 42 * hour, toMs: 47 * hour });
  });
  test('two fingers that move alike only move the window', () => {
    const window = { fromMs: 40 * hour, toMs: 50 * hour };
    expect(pinch(window, [300, 500], [400, 600], 1000, whole)).toEqual({ fromMs: 39 * hour, toMs: 49 * hour });
  });
  test('fingers on one spot, or crossed, do not turn the picture inside out', () => {
    const window = { fromMs: 40 * hour, toMs: 50 * hour };
    for (const after of [
      [400, 400],
      [500, 300],
    ] as const) {
      const { fromMs, toMs } = pinch(window, [300, 500], after, 1000, whole);
      expect(toMs - fromMs).toBeGreaterThanOrEqual(shortestMs);
      expect(fromMs).toBeGreaterThanOrEqual(whole.fromMs);
      expect(toMs).toBeLessThanOrEqual(whole.toMs);
    }
  });
  test('one that is too long for the whole becomes the whole', () => {
    expect(keepInside({ fromMs: -hour, toMs: 200 * hour }, whole)).toEqual(whole);
  });
});
