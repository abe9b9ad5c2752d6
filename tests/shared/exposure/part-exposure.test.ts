import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import { type Part, type PartExposure, PartFigures } from '../../../shared/exposure/part-exposure.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';

const silenceMs = 15 * MINUTE_MS;
const band = { low: 20, high: 28 };
const corridorAt = () => ({ temperature: band, humidity: { low: 85, high: 100 } });
const WHOLE: Part = { fromMs: 0, toMs: 12 * HOUR_MS };

function figuresOf(part: Part, samples: readonly ClimateSample[]): PartExposure {
  const figures = new PartFigures(part, { silenceMs, corridorAt });
  for (const sample of samples) figures.add(sample);
  return figures.result();
}

/** What must add up, as plain numbers. */
function sums(part: PartExposure): number[] {
  const { temperature, humidity } = part.insideCorridor;
  return [
    ...[part.minutesAbove['28'], part.minutesAbove['29'], part.degreeHoursAbove['28'], part.vpdHours],
    ...[
      part.unknownHours,
      temperature.insideHours,
      temperature.judgedHours,
      humidity.insideHours,
      humidity.judgedHours,
    ],
  ].map((value) => value ?? Number.NaN);
}

const sampleSteps = fc.array(
  fc.record({
    stepMs: fc.integer({ min: 1, max: 25 * MINUTE_MS }),
    temperature: fc.option(fc.double({ min: 15, max: 33, noNaN: true }), { nil: null }),
    humidity: fc.option(fc.double({ min: 60, max: 100, noNaN: true }), { nil: null }),
  }),
  { minLength: 2, maxLength: 120 },
);

describe('the figures of parts of a batch', () => {
  it('that meet add up to the whole, wherever the borders lie and whatever is missing', () => {
    fc.assert(
      fc.property(sampleSteps, fc.array(fc.integer({ min: 1, max: 12 * 3600 }), { maxLength: 5 }), (steps, borders) => {
        let timeMs = -HOUR_MS;
        const samples = steps.map(({ stepMs, temperature, humidity }) => {
          timeMs += stepMs;
          return { timeMs, temperature, humidity };
        });
        const cuts = [0, ...borders.map((seconds) => seconds * 1000), WHOLE.toMs].sort((a, b) => a - b);
        const parts = cuts.slice(1).map((toMs, i) => figuresOf({ fromMs: cuts[i] ?? 0, toMs }, samples));
        const whole = sums(figuresOf(WHOLE, samples));
        const added = parts.map(sums).reduce((total, one) => total.map((value, i) => value + (one[i] ?? 0)));
        whole.forEach((value, i) => {
          expect(added[i]).toBeCloseTo(value, 6);
        });
      }),
      { numRuns: 60, seed: 20_260_302 },
    );
  });

  it('tell for how many hours the air was inside its corridor, of those that are known', () => {
    const at = (hours: number, temperature: number) => ({ timeMs: hours * HOUR_MS, temperature, humidity: 90 });
    const minutes = Array.from({ length: 12 * 6 + 1 }, (_, i) => at(i / 6, i <= 36 ? 25 : 29));
    const known = minutes.filter(({ timeMs }) => timeMs <= 8 * HOUR_MS);
    const { insideCorridor, unknownHours } = figuresOf(WHOLE, known);
    // From 25 at 6 h to 29 at 6 h 10 min: 28 is crossed after three quarters of it.
    expect(insideCorridor.temperature.insideHours).toBeCloseTo(6 + 0.75 / 6, 9);
    expect(insideCorridor.temperature.judgedHours).toBeCloseTo(8, 9);
    expect(insideCorridor.humidity.share).toBe(1);
    expect(unknownHours).toBeCloseTo(4, 9);
  });

  it('join a reading just before the part, and none further away than the silence', () => {
    const part = { fromMs: HOUR_MS, toMs: 2 * HOUR_MS };
    const at = (timeMs: number) => ({ timeMs, temperature: 21, humidity: 95 });
    const joined = figuresOf(part, [at(HOUR_MS - 10 * MINUTE_MS), at(HOUR_MS + 5 * MINUTE_MS)]);
    expect(joined.unknownHours).toBeCloseTo(55 / 60, 9);
    const apart = figuresOf(part, [at(HOUR_MS - 10 * MINUTE_MS), at(HOUR_MS + 5 * MINUTE_MS + 1)]);
    expect(apart.unknownHours).toBe(1);
  });
});
