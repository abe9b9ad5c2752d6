import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createExposure, type ExposureResult, type ExposureSpan } from '../../../shared/exposure/exposure.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

type Readings = readonly (readonly [hour: number, value: number])[];

const silenceMs = 15 * MINUTE_MS;

function expose(readings: Readings, span: Partial<ExposureSpan> = {}): ExposureResult {
  const exposure = createExposure({ fromMs: 0, toMs: 24 * HOUR_MS, silenceMs, above: [28, 29], below: [20], ...span });
  for (const [hour, value] of readings) exposure.add(hour * HOUR_MS, value);
  return exposure.result();
}

/** Readings every `stepMinutes` over [0, hours]. */
function sampled(hours: number, stepMinutes: number, valueAt: (hour: number) => number): Readings {
  const count = Math.round((hours * 60) / stepMinutes);
  return Array.from(
    { length: count + 1 },
    (_, i) => [(i * stepMinutes) / 60, valueAt((i * stepMinutes) / 60)] as const,
  );
}

describe('exposure against closed-form integrals', () => {
  it('is exact for a ramp: 20 to 32 °C in 12 h is 4 h and 8 °C·h above 28', () => {
    const result = expose(
      sampled(12, 10, (hour) => 20 + hour),
      { toMs: 12 * HOUR_MS },
    );
    expect(result.mean).toBeCloseTo(26, 9);
    expect(result.hoursAbove['28']).toBeCloseTo(4, 9);
    expect(result.minutesAbove['29']).toBeCloseTo(180, 9);
    expect(result.degreeHoursAbove['28']).toBeCloseTo(8, 9);
    expect(result.degreeHoursAbove['29']).toBeCloseTo(4.5, 9);
    expect(result).toMatchObject({ min: 20, max: 32, knownHours: 12, unknownHours: 0 });
  });

  it('is exact for a triangle whose limit is crossed between readings', () => {
    // 27 → 30 → 27 in 20 min, three readings: above 28 for 2/3 of it, a triangle 2 °C high.
    const result = expose(
      [
        [0, 27],
        [1 / 6, 30],
        [1 / 3, 27],
      ],
      { toMs: HOUR_MS / 3 },
    );
    expect(result.minutesAbove['28']).toBeCloseTo(40 / 3, 9);
    expect(result.degreeHoursAbove['28']).toBeCloseTo((2 * (2 / 9)) / 2, 9);
    expect(result.mean).toBeCloseTo(28.5, 9);
  });

  it('follows a sine to the accuracy of its sampling', () => {
    // 25 + 5 sin: above 28 where sin > 0.6. One period of 24 h.
    const limitAngle = Math.asin(0.6);
    const hours = (24 * (Math.PI - 2 * limitAngle)) / (2 * Math.PI);
    const degreeHours = (24 / (2 * Math.PI)) * (2 * 5 * Math.cos(limitAngle) - 3 * (Math.PI - 2 * limitAngle));
    const result = expose(sampled(24, 1, (hour) => 25 + 5 * Math.sin((2 * Math.PI * hour) / 24)));
    expect(result.mean).toBeCloseTo(25, 9);
    expect(result.hoursAbove['28']).toBeCloseTo(hours, 4);
    expect(result.degreeHoursAbove['28']).toBeCloseTo(degreeHours, 4);
    expect(result.hoursBelow['20']).toBe(0);
  });

  it('weighs by time and not by reading: ten readings in a hot minute do not heat the mean', () => {
    const burst = Array.from({ length: 10 }, (_, i) => [0.2 + i / 600, 30] as const);
    const result = expose([[0, 20], [0.2 - 1e-6, 20], ...burst, [0.2 + 10 / 600, 20], [0.4, 20]], {
      toMs: 0.4 * HOUR_MS,
    });
    expect(result.mean).toBeLessThan(20.5);
  });
});

describe('exposure on the limit', () => {
  it.each([
    ['on it', 28, 0, 0],
    ['a hair above it', 28.1, 60, 0.1],
    ['a hair under it', 27.9, 0, 0],
  ])('a flat hour %s', (_why, value, minutes, degreeHours) => {
    const result = expose(
      sampled(1, 10, () => value),
      { toMs: HOUR_MS },
    );
    expect(result.minutesAbove['28']).toBeCloseTo(minutes, 9);
    expect(result.degreeHoursAbove['28']).toBeCloseTo(degreeHours, 9);
  });

  it.each([
    ['on it', 20, 0, 0],
    ['a hair under it', 19.9, 60, 0.1],
    ['a hair above it', 20.1, 0, 0],
  ])('a flat hour on the low side %s', (_why, value, minutes, degreeHours) => {
    const result = expose(
      sampled(1, 10, () => value),
      { toMs: HOUR_MS },
    );
    expect(result.minutesBelow['20']).toBeCloseTo(minutes, 9);
    expect(result.hoursBelow['20']).toBeCloseTo(minutes / 60, 9);
    expect(result.degreeHoursBelow['20']).toBeCloseTo(degreeHours, 9);
  });
});

describe('exposure and what is not known', () => {
  it.each([
    ['a gap of the silence is joined', 0.25, 0.25, 0.75],
    ['a longer one is not', 0.26, 0, 1],
  ])('%s', (_why, hour, knownHours, unknownHours) => {
    const result = expose(
      [
        [0, 30],
        [hour, 30],
      ],
      { toMs: HOUR_MS },
    );
    expect(result).toMatchObject({ knownHours, unknownHours });
    expect(result.hoursAbove['28']).toBe(knownHours);
  });

  it('counts the time before the first and after the last reading as unknown', () => {
    const result = expose([
      [6, 25],
      [6.25, 25],
    ]);
    expect(result).toMatchObject({ knownHours: 0.25, unknownHours: 23.75 });
  });

  it('takes a lone reading for min, max and mean, and for no time at all', () => {
    expect(expose([[6, 30]])).toMatchObject({
      mean: 30,
      min: 30,
      max: 30,
      knownHours: 0,
      unknownHours: 24,
      minutesAbove: { '28': 0, '29': 0 },
    });
  });

  it('takes the plain mean of lone readings, and drops it once any time is known', () => {
    expect(
      expose([
        [1, 20],
        [2, 30],
      ]).mean,
    ).toBe(25);
    expect(
      expose([
        [1, 20],
        [2, 30],
        [2.2, 30],
      ]),
    ).toMatchObject({ mean: 30, min: 20, max: 30 });
  });

  it.each([
    ['no reading', []],
    [
      'readings outside the span only',
      [
        [-1, 30],
        [25, 30],
      ] as Readings,
    ],
  ])('says nothing of a span with %s', (_why, readings) => {
    expect(expose(readings)).toMatchObject({ mean: null, min: null, max: null, knownHours: 0, unknownHours: 24 });
  });

  it('passes over a reading that is not later than the last', () => {
    const stray: Readings = [
      [0, 20],
      [0.1, 22],
      [0.1, 99],
      [0.05, 99],
      [0.2, 24],
    ];
    expect(expose(stray)).toEqual(
      expose([
        [0, 20],
        [0.1, 22],
        [0.2, 24],
      ]),
    );
  });
});

describe('exposure at the ends of its span', () => {
  it('cuts a line at the ends, at its value there', () => {
    const result = expose(
      [
        [-0.1, 26],
        [0.1, 30],
        [0.3, 34],
      ],
      { toMs: 0.2 * HOUR_MS },
    );
    expect(result.min).toBeCloseTo(28, 9);
    expect(result.max).toBeCloseTo(32, 9);
    expect(result.mean).toBeCloseTo(30, 9);
    expect(result.knownHours).toBeCloseTo(0.2, 9);
  });

  it('sees a line that runs across the whole span without a reading in it', () => {
    const result = expose(
      [
        [0, 30],
        [0.2, 30],
      ],
      { fromMs: 0.05 * HOUR_MS, toMs: 0.15 * HOUR_MS },
    );
    expect(result.knownHours).toBeCloseTo(0.1, 9);
    expect(result).toMatchObject({ mean: 30, unknownHours: 0 });
  });
});

describe('exposure in parts', () => {
  const readings = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 25 }), fc.double({ min: 15, max: 35, noNaN: true })), { maxLength: 80 })
    .map((steps) => {
      let minute = -30;
      return steps.map(([gap, value]) => {
        minute += gap;
        return [minute / 60, value] as const;
      });
    });

  it('adds to the whole, wherever it is cut', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 1, max: 10 * 60 - 1 }), (series, cutMinute) => {
        const cutMs = cutMinute * MINUTE_MS;
        const toMs = 10 * HOUR_MS;
        const whole = expose(series, { toMs });
        const parts = [expose(series, { toMs: cutMs }), expose(series, { fromMs: cutMs, toMs })];
        const sum = (figure: (one: ExposureResult) => number | undefined) =>
          parts.reduce((total, one) => total + (figure(one) ?? Number.NaN), 0);
        expect(sum((one) => one.knownHours)).toBeCloseTo(whole.knownHours, 9);
        expect(sum((one) => one.unknownHours)).toBeCloseTo(whole.unknownHours, 9);
        expect(sum((one) => one.valueHours)).toBeCloseTo(whole.valueHours, 7);
        expect(sum((one) => one.minutesAbove['28'])).toBeCloseTo(whole.minutesAbove['28'] ?? Number.NaN, 7);
        expect(sum((one) => one.degreeHoursAbove['28'])).toBeCloseTo(whole.degreeHoursAbove['28'] ?? Number.NaN, 7);
        expect(sum((one) => one.degreeHoursBelow['20'])).toBeCloseTo(whole.degreeHoursBelow['20'] ?? Number.NaN, 7);
        const lows = parts.flatMap((one) => one.min ?? []);
        expect(lows.length === 0 ? null : Math.min(...lows)).toBe(whole.min);
      }),
    );
  });

  it('never knows more than the span holds, and keeps the mean between the extremes', () => {
    fc.assert(
      fc.property(readings, (series) => {
        const { knownHours, unknownHours, mean, min, max } = expose(series, { toMs: 10 * HOUR_MS });
        expect(knownHours + unknownHours).toBeCloseTo(10, 9);
        expect([mean, min, max].filter((one) => one === null).length % 3).toBe(0);
        expect(mean ?? 0).toBeGreaterThanOrEqual(min ?? 0);
        expect(mean ?? 0).toBeLessThanOrEqual(max ?? 0);
      }),
    );
  });

  it('is not changed by a reading put on the line between two others', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.double({ min: 15, max: 35, noNaN: true }), fc.double({ min: 15, max: 35, noNaN: true })),
        ([a, b]) => {
          const plain = expose(
            [
              [0, a],
              [0.2, b],
            ],
            { toMs: 0.2 * HOUR_MS },
          );
          const dense = expose(
            [
              [0, a],
              [0.05, a + (b - a) / 4],
              [0.2, b],
            ],
            { toMs: 0.2 * HOUR_MS },
          );
          expect(dense.mean).toBeCloseTo(plain.mean ?? Number.NaN, 9);
          expect(dense.degreeHoursAbove['28']).toBeCloseTo(plain.degreeHoursAbove['28'] ?? Number.NaN, 9);
          expect(dense.minutesAbove['28']).toBeCloseTo(plain.minutesAbove['28'] ?? Number.NaN, 6);
        },
      ),
    );
  });
});
