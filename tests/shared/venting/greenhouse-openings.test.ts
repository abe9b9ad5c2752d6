// Real vents opening and closing over real greenhouse air, where the open data lie beside the repository; elsewhere courses of the same shape.
// There is no probe outdoors: the end is fitted, not known.
import { describe, expect, test } from 'vitest';
import type { TimedValue } from '../../../shared/exposure/segments.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { ratioOfAir } from '../../../shared/venting/humidity-ratio-series.ts';
import { fitRelaxation } from '../../support/fit-relaxation.ts';
import { loadGreenhouseSeries } from '../../support/greenhouse-series.ts';
import { createNoiseStream } from '../../support/noise-stream.ts';

const { rows, isMeasured } = loadGreenhouseSeries();

/** g/kg between two instants, ends included, as measured; or made up, every five minutes. */
function ratios(from: string, to: string, madeUp: (hours: number) => number): TimedValue[] {
  const [fromMs, toMs] = [Date.parse(from), Date.parse(to)];
  if (!isMeasured) {
    const count = Math.floor((toMs - fromMs) / (5 * MINUTE_MS)) + 1;
    const stream = createNoiseStream(7);
    const times = Array.from({ length: count }, (_, i) => fromMs + i * 5 * MINUTE_MS);
    return times.map((timeMs) => ({ timeMs, value: madeUp((timeMs - fromMs) / HOUR_MS) + 0.03 * stream.normal() }));
  }
  return rows.flatMap(({ timeMs, sensors: [{ temperature, humidity }] }) => {
    if (timeMs < fromMs || timeMs > toMs || temperature === null || humidity === null) return [];
    return { timeMs, value: 1000 * ratioOfAir(temperature, humidity, 0) };
  });
}

describe('2022-03-13, 13:05 to 13:09 local time: vents from 0 to 35 %, humidity from 78 to 44 %', () => {
  // Closed again five minutes later: the fall is two readings long.
  const values = ratios('2022-03-13T12:05:00Z', '2022-03-13T12:10:00Z', (hours) => 8 + 6.7 * Math.exp(-12 * hours));

  test('the air dries by a third in four minutes', () => {
    expect(values).toHaveLength(2);
    const [before, after] = values.map(({ value }) => value);
    expect((after ?? Number.NaN) / (before ?? Number.NaN)).toBeLessThan(0.72);
  });

  test('two readings give no rate, and it says so instead of inventing one', () => {
    expect(fitRelaxation(values)).toMatchObject({ relaxation: null, why: 'too-few-readings' });
  });

  test('nor do the three of the closing after it', () => {
    const closing = ratios('2022-03-13T12:09:00Z', '2022-03-13T12:21:00Z', (hours) => 13 - 3 * Math.exp(-8 * hours));
    expect(closing).toHaveLength(3);
    expect(fitRelaxation(closing)).toMatchObject({ relaxation: null, why: 'too-few-readings' });
  });
});

describe('changes that were left standing', () => {
  // Rate, start and end in g/kg of the measured series by SciPy 1.17.1, curve_fit on the same humidity ratios.
  test.each([
    {
      from: '2022-03-11T22:24:00Z',
      to: '2022-03-12T00:06:00Z',
      what: 'vents from 6 to 0 % at night: the air fills up with what the plants give off',
      scipy: { rate: 1.44185, start: 8.21002, end: 9.81979 },
    },
    {
      from: '2022-02-01T18:45:00Z',
      to: '2022-02-01T21:06:00Z',
      what: 'leeward vents from 27 to 40 % in the evening',
      scipy: { rate: 0.94324, start: 8.28849, end: 7.72683 },
    },
    {
      from: '2022-02-04T08:00:00Z',
      to: '2022-02-04T09:21:00Z',
      what: 'vents from 6 to 0 % in the morning',
      scipy: { rate: 0.53628, start: 7.02013, end: 9.7278 },
    },
  ])('$what', ({ from, to, scipy: { rate, start, end } }) => {
    const values = ratios(from, to, (hours) => end + (start - end) * Math.exp(-rate * hours));
    const { relaxation } = fitRelaxation(values);
    if (relaxation === null) throw new Error('no fit');
    // Measured: as near as the digits given here. Made up: within four standard errors of the truth that was put in.
    const nearness = (error: number) => (isMeasured ? 1e-4 : 4 * error);
    expect(Math.abs(relaxation.ratePerHour - rate)).toBeLessThan(nearness(relaxation.rateError));
    expect(Math.abs(relaxation.end - end)).toBeLessThan(nearness(relaxation.endError));
    if (isMeasured) expect(relaxation.start).toBeCloseTo(start, 4);
    expect(relaxation.r2).toBeGreaterThan(0.9);
  });

  test('a window of forty minutes through 5-minute readings is too uncertain to give a rate', () => {
    const values = ratios('2022-03-15T21:54:00Z', '2022-03-15T22:36:00Z', (hours) => 8 + 0.82 * Math.exp(-2 * hours));
    expect(fitRelaxation(values)).toMatchObject({ relaxation: null, why: 'uncertain' });
  });
});
