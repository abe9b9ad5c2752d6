import { describe, expect, it } from 'vitest';
import { emptyFlatLineMemory, flatLine } from '../../../../shared/readings/quality/flat-line.ts';
import { defaultQualityLimits } from '../../../../shared/readings/quality/quality-limits.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';

const limits = defaultQualityLimits.temperature.flatLine;
const humidityLimits = defaultQualityLimits.humidity.flatLine;

/** The flag of the last of readings every `stepMs` from 0 to `untilMs`. */
function flagAt(untilMs: number, valueAt: (ms: number) => number, stepMs = 5 * MINUTE_MS, its = limits) {
  let tested = flatLine(emptyFlatLineMemory, { timeMs: 0, value: valueAt(0) }, its);
  for (let timeMs = stepMs; timeMs <= untilMs; timeMs += stepMs) {
    tested = flatLine(tested.memory, { timeMs, value: valueAt(timeMs) }, its);
  }
  return tested.flag;
}

describe('flat line', () => {
  it.each([
    ['just short of three hours', 3 * HOUR_MS - 5 * MINUTE_MS, 1],
    ['three hours', 3 * HOUR_MS, 3],
    ['just short of six', 6 * HOUR_MS - 5 * MINUTE_MS, 3],
    ['six hours', 6 * HOUR_MS, 4],
  ])('goes by time: %s', (_why, untilMs, flag) => {
    expect(flagAt(untilMs, () => 21.4)).toBe(flag);
  });

  it('gives the same answer however often the probe sends', () => {
    expect([10 * 1000, MINUTE_MS, 15 * MINUTE_MS].map((stepMs) => flagAt(3 * HOUR_MS, () => 21.4, stepMs))).toEqual([
      3, 3, 3,
    ]);
  });

  it('starts again with one different value', () => {
    expect(flagAt(3 * HOUR_MS, (ms) => (ms === HOUR_MS ? 21.5 : 21.4))).toBe(1);
  });

  it.each([
    ['temperature', limits, 6 * HOUR_MS, 21.4],
    ['humidity', humidityLimits, 12 * HOUR_MS, 93],
  ])(
    'takes %s that flickers by less than its tolerance of 0.01 for flat, and by a hundredth more for alive',
    (_name, its, untilMs, value) => {
      const flicker = (by: number) => (ms: number) => value + (ms % HOUR_MS === 0 ? by : 0);
      expect(flagAt(untilMs, flicker(0.009), 5 * MINUTE_MS, its)).toBe(4);
      expect(flagAt(untilMs, flicker(0.011), 5 * MINUTE_MS, its)).toBe(1);
    },
  );

  it('takes a slow drift for life', () => {
    expect(flagAt(12 * HOUR_MS, (ms) => 21 + ms / HOUR_MS / 2)).toBe(1);
  });

  it.each([
    ['a silence of an hour is joined', HOUR_MS, 3],
    ['a longer one is not: nobody knows what was between', HOUR_MS + 1, 1],
  ])('%s', (_why, gapMs, flag) => {
    const run = { sinceMs: 0, lastMs: 3 * HOUR_MS - gapMs, lowest: 21.4, highest: 21.4 };
    expect(flatLine({ run }, { timeMs: 3 * HOUR_MS, value: 21.4 }, limits).flag).toBe(flag);
  });

  it.each([
    ['humidity parked at 100 for a day is not by itself flat', 100, 24 * HOUR_MS, 2],
    ['nor at 99.5', 99.5, 24 * HOUR_MS, 2],
    ['at 99.4 it is, after six hours', 99.4, 6 * HOUR_MS, 3],
    ['and not before', 99.4, 6 * HOUR_MS - 5 * MINUTE_MS, 1],
    ['after twelve it has failed', 93.1, 12 * HOUR_MS, 4],
  ])('%s', (_why, value, untilMs, flag) => {
    expect(flagAt(untilMs, () => value, 5 * MINUTE_MS, humidityLimits)).toBe(flag);
  });

  it('passes over what is missing', () => {
    const before = flatLine(emptyFlatLineMemory, { timeMs: 0, value: 21.4 }, limits);
    const missing = flatLine(before.memory, { timeMs: MINUTE_MS, value: null }, limits);
    expect(missing).toEqual({ memory: before.memory, flag: 9 });
  });
});
