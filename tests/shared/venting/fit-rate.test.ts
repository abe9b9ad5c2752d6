import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { TimedValue } from '../../../shared/exposure/segments.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { fitRate } from '../../../shared/venting/fit-rate.ts';
import type { WindowSeries } from '../../../shared/venting/relaxation-model.ts';
import { fitRelaxation, type Relaxation } from '../../support/fit-relaxation.ts';
import { createNoiseStream } from '../../support/noise-stream.ts';

interface Course {
  readonly start: number;
  readonly end: number;
  readonly ratePerHour: number;
  readonly minutes: number;
  readonly everyMinutes: number;
  readonly noise: number;
}

const course: Course = { start: 14, end: 9, ratePerHour: 3, minutes: 90, everyMinutes: 1, noise: 0.05 };

function draw({ start, end, ratePerHour, minutes, everyMinutes, noise }: Course, draws = 1): TimedValue[] {
  const stream = createNoiseStream(draws);
  return Array.from({ length: Math.floor(minutes / everyMinutes) + 1 }, (_, i) => ({
    timeMs: i * everyMinutes * MINUTE_MS,
    value: end + (start - end) * Math.exp((-ratePerHour * i * everyMinutes) / 60) + noise * stream.normal(),
  }));
}

function fitted(values: Iterable<TimedValue>): Relaxation {
  const { relaxation } = fitRelaxation(values);
  if (relaxation === null) throw new Error('no fit');
  return relaxation;
}

describe('a course without noise', () => {
  test.each([
    { ratePerHour: 0.5, why: 'slow: hardly half-way when it ends' },
    { ratePerHour: 3, why: 'middling' },
    { ratePerHour: 20, why: 'fast: settled in ten minutes' },
  ])('of $ratePerHour/h is found to a millionth ($why)', ({ ratePerHour }) => {
    const found = fitted(draw({ ...course, ratePerHour, noise: 0 }));
    expect(Math.abs(found.ratePerHour / ratePerHour - 1)).toBeLessThan(1e-6);
    expect(found.start).toBeCloseTo(14, 5);
    expect(found.end).toBeCloseTo(9, 5);
    expect(found.r2).toBeGreaterThan(0.999999);
  });

  test('that rises is found as well as one that falls', () => {
    const found = fitted(draw({ ...course, start: 9, end: 14, noise: 0 }));
    expect(found.ratePerHour).toBeCloseTo(3, 5);
    expect(found.end).toBeCloseTo(14, 5);
  });
});

describe('a course with noise of a hundredth of its fall', () => {
  test('comes out within 2 % of its rate', () => {
    const found = fitted(draw(course));
    expect(Math.abs(found.ratePerHour / 3 - 1)).toBeLessThan(0.02);
    expect(found.readings).toBe(91);
  });

  test('the 95 % intervals of rate and end hold the truth in 92 to 98 % of 400 drawn courses', () => {
    const all = Array.from({ length: 400 }, (_, i) => fitted(draw({ ...course, minutes: 60, noise: 0.1 }, i + 1)));
    const share = (holds: (one: Relaxation) => boolean) => all.filter(holds).length / all.length;
    const rate = share(({ rateInterval: { low, high } }) => low <= 3 && 3 <= high);
    const end = share(({ endInterval: { low, high } }) => low <= 9 && 9 <= high);
    expect(rate).toBeGreaterThan(0.92);
    expect(rate).toBeLessThan(0.98);
    expect(end).toBeGreaterThan(0.92);
    expect(end).toBeLessThan(0.98);
  });

  test('noise that hangs together from reading to reading widens the interval', () => {
    const stream = createNoiseStream(5);
    let drift = 0;
    const values = draw({ ...course, noise: 0 }).map(({ timeMs, value }) => {
      drift = 0.9 * drift + Math.sqrt(1 - 0.81) * 0.05 * stream.normal();
      return { timeMs, value: value + drift };
    });
    expect(fitted(values).rateError).toBeGreaterThan(2 * fitted(draw(course)).rateError);
  });
});

describe('what does not matter', () => {
  test('when it happened, and in which unit: rates stay, values follow', () => {
    const shift = fc.integer({ min: -1e12, max: 1e12 });
    const factor = fc.double({ min: 0.001, max: 1000, noNaN: true });
    const values = draw(course);
    const before = fitted(values);
    fc.assert(
      fc.property(shift, factor, fc.double({ min: -10, max: 10, noNaN: true }), (ms, scale, offset) => {
        const moved = values.map(({ timeMs, value }) => ({ timeMs: timeMs + ms, value: offset + scale * value }));
        const after = fitted(moved);
        expect(Math.abs(after.ratePerHour / before.ratePerHour - 1)).toBeLessThan(1e-4);
        expect(Math.abs((after.end - offset) / scale - before.end)).toBeLessThan(1e-3);
      }),
      { numRuns: 20 },
    );
  });

  test('readings that repeat or go back in time', () => {
    const values = draw(course);
    const [first, second] = values;
    if (first === undefined || second === undefined) throw new Error('a course has readings');
    expect(fitRelaxation([first, second, first, second, ...values.slice(2)])).toEqual(fitRelaxation(values));
  });
});

describe('no fit', () => {
  test.each([
    { given: { minutes: 6 }, why: 'too-few-readings', because: 'seven readings' },
    { given: { ratePerHour: 200 }, why: 'too-fast', because: 'settled before the second reading' },
    { given: { ratePerHour: 0.02, noise: 0.001 }, why: 'too-slow', because: 'a straight line' },
    { given: { noise: 3 }, why: 'poor-fit', because: 'noise as large as the fall' },
    { given: { minutes: 15, noise: 0.2 }, why: 'uncertain', because: 'a short look through noise' },
  ])('$why: $because', ({ given, why }) => {
    expect(fitRelaxation(draw({ ...course, ...given }))).toMatchObject({ relaxation: null, why });
  });

  test.each([
    { values: [], why: 'none' },
    { values: Array.from({ length: 30 }, (_, i) => ({ timeMs: i * MINUTE_MS, value: 9 })), why: 'a constant' },
  ])('of $why, and no figure that is not a number', ({ values }) => {
    const result = fitRelaxation(values);
    expect(result.relaxation).toBeNull();
    expect(JSON.stringify(result)).not.toMatch(/NaN|:null,"percent/);
  });

  test('with the figure that says how much is missing', () => {
    expect(fitRelaxation(draw({ ...course, minutes: 6 }))).toEqual({
      relaxation: null,
      why: 'too-few-readings',
      readings: 7,
    });
  });
});

describe('air that begins in balance and then follows the house', () => {
  /** House air that rises by 4 g/kg an hour for three hours; `above` = how far from its balance the chamber begins. */
  function follow(above: number, draws: number): WindowSeries {
    const [rate, rise, source, everyHours, count] = [3, 4, 6, 1 / 60, 180];
    const stream = createNoiseStream(draws);
    const house = (hours: number) => 8 + rise * hours;
    const behind = rise / rate;
    const air = (hours: number) => house(hours) + source / rate - behind + (above + behind) * Math.exp(-rate * hours);
    const steps = Array.from({ length: count }, (_, i) => {
      const [from, to] = [i * everyHours, (i + 1) * everyHours];
      const level = { houseFrom: house(from), houseTo: house(to), driveFrom: 1, driveTo: 1 };
      return { ...level, hours: everyHours, reading: i + 1 };
    });
    const values = Array.from({ length: count + 1 }, (_, i) => air(i * everyHours) + 0.05 * stream.normal());
    return { steps, values };
  }

  const whyNot = (above: number) =>
    Array.from({ length: 100 }, (_, i) => fitRate(follow(above, i + 1))).map((one) => ('why' in one ? one.why : 'fit'));

  test('gives no rate, however well the curve fits: nothing of it had to fade', () => {
    const all = whyNot(0);
    expect(all.filter((why) => why === 'no-decay').length).toBeGreaterThan(90);
  });

  test.each([2, -2])('gives one as soon as the start stands out of the noise: %s g/kg from its balance', (above) => {
    expect(new Set(whyNot(above))).toEqual(new Set(['fit']));
  });
});
