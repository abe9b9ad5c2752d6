import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { vpdKpa } from '../../../shared/air/vapour.ts';
import { createDailyExposure, dailyExposure } from '../../../shared/exposure/daily-exposure.ts';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import { createExposure } from '../../../shared/exposure/exposure.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

const CLOSED = Date.UTC(2026, 2, 2, 15, 20);
const span = { closedMs: CLOSED, silenceMs: 15 * MINUTE_MS };

function every(
  minutes: number,
  fromHour: number,
  toHour: number,
  temperatureAt: (hour: number) => number | null,
  humidity: number | null = 95,
): ClimateSample[] {
  const count = Math.round(((toHour - fromHour) * 60) / minutes);
  return Array.from({ length: count + 1 }, (_, i) => {
    const hour = fromHour + (i * minutes) / 60;
    return { timeMs: CLOSED + hour * HOUR_MS, temperature: temperatureAt(hour), humidity };
  });
}

describe('healing days', () => {
  it('are 24 h blocks from closing, each with its own figures', () => {
    // The second day is a ramp from 24 to 30 °C: 28 is reached after 16 h, 29 after 20 h.
    const days = dailyExposure(
      every(10, 0, 48, (hour) => (hour <= 24 ? 24 : 24 + (hour - 24) / 4)),
      span,
    );
    expect(days).toHaveLength(2);
    expect(days[0]).toEqual({
      day: 1,
      fromMs: CLOSED,
      toMs: CLOSED + DAY_MS,
      temperature: { mean: expect.closeTo(24, 9), min: 24, max: 24 },
      humidity: { mean: expect.closeTo(95, 9), min: 95, max: 95 },
      minutesAbove: { '28': 0, '29': 0 },
      degreeHoursAbove: { '28': 0 },
      unknownHours: 0,
      vpdHours: expect.closeTo(24 * vpdKpa(24, 95), 9),
    });
    expect(days[1]).toMatchObject({
      day: 2,
      fromMs: CLOSED + DAY_MS,
      toMs: CLOSED + 2 * DAY_MS,
      temperature: { mean: expect.closeTo(27, 9), min: 24, max: 30 },
      minutesAbove: { '28': expect.closeTo(480, 6), '29': expect.closeTo(240, 6) },
      degreeHoursAbove: { '28': expect.closeTo(8, 6) },
      unknownHours: 0,
    });
  });

  it('share the line that runs over their border, cut at the border', () => {
    const samples = [-0.1, 0.1].map((hour) => ({
      timeMs: CLOSED + (24 + hour) * HOUR_MS,
      temperature: 28 + 10 * hour,
      humidity: 95,
    }));
    const days = dailyExposure(samples, span);
    expect(days.map((day) => day.unknownHours)).toEqual([expect.closeTo(23.9, 9), expect.closeTo(23.9, 9)]);
    expect(days.map((day) => day.minutesAbove['28'])).toEqual([0, expect.closeTo(6, 6)]);
    expect(days[0]?.temperature.max).toBeCloseTo(28, 6);
    expect(days[1]?.temperature.min).toBeCloseTo(28, 6);
  });

  it('leave out what was before closing, but know the line over it', () => {
    const days = dailyExposure(
      every(10, -2, 1, (hour) => (hour < -0.5 ? 40 : 24)),
      span,
    );
    expect(days).toHaveLength(1);
    expect(days[0]).toMatchObject({ temperature: { max: 24 }, unknownHours: expect.closeTo(23, 9) });
  });

  it.each([
    ['nothing at all', []],
    ['readings before closing only', every(10, -2, -1, () => 24)],
  ])('do not exist for %s', (_why, samples) => {
    expect(dailyExposure(samples, span)).toEqual([]);
  });

  it('do not open with a reading at the very end of the day before', () => {
    expect(
      dailyExposure(
        every(10, 0, 24, () => 24),
        span,
      ),
    ).toHaveLength(1);
  });

  it('are there, unknown, through a long silence', () => {
    const days = dailyExposure([...every(10, 0, 12, () => 24), ...every(10, 60, 72, () => 25)], span);
    expect(days.map((day) => [day.day, day.unknownHours, day.temperature.mean])).toEqual([
      [1, 12, expect.closeTo(24, 9)],
      [2, 24, null],
      [3, 12, expect.closeTo(25, 9)],
    ]);
  });

  it.each([
    ['in the middle of a day', 36, [24, 12]],
    ['at the end of one', 48, [24, 24]],
    ['long after the last reading', 60, [24, 24, 12]],
    ['before the last reading', 12, [12]],
  ])('are cut at an end %s', (_why, endHour, hours) => {
    const days = dailyExposure(
      every(10, 0, 30, () => 24),
      { ...span, endMs: CLOSED + endHour * HOUR_MS },
    );
    expect(days.map((day) => (day.toMs - day.fromMs) / HOUR_MS)).toEqual(hours);
    expect(days[0]?.unknownHours).toBe(0);
  });

  it('give rows up to the end even when nothing was ever heard', () => {
    const days = dailyExposure([], { ...span, endMs: CLOSED + 30 * HOUR_MS });
    expect(days.map((day) => [day.day, day.unknownHours])).toEqual([
      [1, 24],
      [2, 6],
    ]);
  });

  it('count an hour as unknown when either temperature or humidity is', () => {
    const samples = [...every(10, 0, 12, () => 24), ...every(10, 12 + 1 / 6, 24, () => 24, null)];
    const [day] = dailyExposure(samples, span);
    expect(day).toMatchObject({ unknownHours: expect.closeTo(12, 9), temperature: { mean: expect.closeTo(24, 9) } });
    expect(day?.vpdHours).toBeCloseTo(12 * vpdKpa(24, 95), 9);
  });

  it('join the values around one that is missing, within the silence', () => {
    const [day] = dailyExposure(
      every(5, 0, 24, (hour) => (Math.round(hour * 12) % 2 === 1 ? null : 24)),
      span,
    );
    expect(day?.unknownHours).toBe(0);
  });

  it('can be asked at any time and go on afterwards', () => {
    const samples = every(10, 0, 30, (hour) => 24 + hour / 10);
    const days = createDailyExposure(span);
    for (const sample of samples) {
      days.add(sample);
      days.result();
    }
    expect(days.result()).toEqual(dailyExposure(samples, span));
  });

  it('add to the exposure of the whole', () => {
    const steps = fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.double({ min: 15, max: 35, noNaN: true })), {
      minLength: 100,
      maxLength: 300,
    });
    fc.assert(
      fc.property(steps, (gaps) => {
        let timeMs = CLOSED - HOUR_MS;
        const whole = createExposure({
          fromMs: CLOSED,
          toMs: CLOSED + 10 * DAY_MS,
          silenceMs: span.silenceMs,
          above: [28],
        });
        const days = createDailyExposure({ ...span, endMs: CLOSED + 10 * DAY_MS });
        for (const [gap, temperature] of gaps) {
          timeMs += gap * MINUTE_MS;
          whole.add(timeMs, temperature);
          days.add({ timeMs, temperature, humidity: 95 });
        }
        const rows = days.result();
        const { degreeHoursAbove, minutesAbove, unknownHours } = whole.result();
        const sum = (figure: (row: (typeof rows)[number]) => number | undefined) =>
          rows.reduce((total, row) => total + (figure(row) ?? Number.NaN), 0);
        expect(sum((row) => row.unknownHours)).toBeCloseTo(unknownHours, 7);
        expect(sum((row) => row.minutesAbove['28'])).toBeCloseTo(minutesAbove['28'] ?? Number.NaN, 6);
        expect(sum((row) => row.degreeHoursAbove['28'])).toBeCloseTo(degreeHoursAbove['28'] ?? Number.NaN, 6);
      }),
      { numRuns: 50 },
    );
  });

  it('stay 24 h long when the clocks go forward (Europe, 29 March 2026)', () => {
    const closedMs = Date.UTC(2026, 2, 28, 14);
    const days = dailyExposure([], { closedMs, endMs: closedMs + 2 * DAY_MS, silenceMs: span.silenceMs });
    expect(days.map((day) => day.toMs)).toEqual([closedMs + DAY_MS, closedMs + 2 * DAY_MS]);
  });
});
