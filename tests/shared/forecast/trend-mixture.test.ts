// Trends of several tempers side by side: who is believed, and how the belief moves.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { updateTrend } from '../../../shared/forecast/local-linear-trend.ts';
import { type Mixture, type MixtureModel, noMixture, updateMixture } from '../../../shared/forecast/trend-mixture.ts';
import { humidityModel, temperatureModel } from '../../../shared/forecast/trend-models.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const START_MS = Date.parse('2026-03-02T07:00:00Z');

function follow(
  values: readonly number[],
  model: MixtureModel = temperatureModel,
  start: Mixture | null = noMixture,
): Mixture {
  const from = start === null ? START_MS : start.timeMs + MINUTE_MS;
  const mixture = values.reduce(
    (memory, value, i) => updateMixture(memory, { timeMs: from + i * MINUTE_MS, value }, model),
    start,
  );
  if (mixture === null) throw new Error('a mixture begins with its first reading');
  return mixture;
}

const weights = ({ trends }: Mixture) => trends.map(({ weight }) => weight);
/** A quiet tent: hundredths of a degree up and down. */
const quiet = Array.from({ length: 90 }, (_, i) => 24 + 0.02 * Math.sin(i * 1.7));

describe('the belief', () => {
  it('begins even, and is one in all whatever comes', () => {
    expect(weights(follow([24]))).toEqual([1 / 3, 1 / 3, 1 / 3]);
    fc.assert(
      fc.property(fc.array(fc.double({ min: -20, max: 60, noNaN: true }), { minLength: 1 }), (values) => {
        const all = weights(follow(values));
        expect(all.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
        for (const one of all) expect(one).toBeGreaterThan(0);
      }),
    );
  });

  it('is with the calm temper in a quiet tent, moves to the stirred one when the sun is let in, and comes back', () => {
    const calm = follow(quiet);
    expect(weights(calm)[0]).toBeGreaterThan(0.9);
    const stirred = follow([24.8, 26, 27.1], temperatureModel, calm);
    expect(weights(stirred)[0]).toBeLessThan(0.05);
    const again = follow(
      Array.from({ length: 120 }, (_, i) => 27.1 + 0.02 * Math.sin(i)),
      temperatureModel,
      stirred,
    );
    expect(weights(again)[0]).toBeGreaterThan(0.9);
  });

  it('is with the rough temper where vents open and close between readings', () => {
    const sawtooth = Array.from({ length: 60 }, (_, i) => 23 + 0.9 * (i % 4));
    expect(weights(follow(sawtooth))[2]).toBeGreaterThan(0.5);
  });

  it('is weighed by how likely each thought the reading, with what went before half forgotten', () => {
    // Worked by hand for two tempers that stand still: weight^keep · normal density, then a tenth spread evenly.
    const still = { levelWalk: 0, slopeWalk: 0, slopeLastsMinutes: 10, firstSlopeSd: 0, longestGapMs: 15 * MINUTE_MS };
    const model: MixtureModel = {
      tempers: [
        { ...still, readingSd: 1 },
        { ...still, readingSd: 2 },
      ],
      remembersMinutes: 1 / Math.LN2,
      openMind: 0.1,
      longestGapMs: 15 * MINUTE_MS,
    };
    const density = (miss: number, variance: number) => Math.exp((-miss * miss) / 2 / variance) / Math.sqrt(variance);
    // First reading 20: level 20 with the variance of a reading. Second 21: spread is twice that.
    const raw = [Math.SQRT1_2 * density(1, 2), Math.SQRT1_2 * density(1, 8)] as const;
    const expected = raw.map((one) => 0.05 + (0.9 * one) / (raw[0] + raw[1]));
    for (const [i, weight] of weights(follow([20, 21], model)).entries())
      expect(weight).toBeCloseTo(expected[i] ?? 0, 12);
  });
});

describe('a mixture', () => {
  it('of one temper is that trend', () => {
    const [temper] = temperatureModel.tempers;
    if (temper === undefined) throw new Error('there are tempers');
    const values = [20, 20.3, 20.1, 20.9];
    const alone = follow(values, { ...temperatureModel, tempers: [temper] });
    const trend = values.reduce<ReturnType<typeof updateTrend>>(
      (memory, value, i) => updateTrend(memory, { timeMs: START_MS + i * MINUTE_MS, value }, temper),
      null,
    );
    expect(alone.trends).toEqual([{ trend, weight: 1 }]);
  });

  it('passes over what is not later or no number, and begins anew after too long a gap', () => {
    const begun = follow([20, 21]);
    expect(updateMixture(begun, { timeMs: begun.timeMs, value: 30 }, temperatureModel)).toBe(begun);
    expect(updateMixture(begun, { timeMs: begun.timeMs + 1, value: Number.NaN }, temperatureModel)).toBe(begun);
    const late = { timeMs: begun.timeMs + 15 * MINUTE_MS + 1, value: 25 };
    expect(updateMixture(begun, late, temperatureModel)).toEqual(updateMixture(noMixture, late, temperatureModel));
  });

  it.each([
    ['temperature', temperatureModel],
    ['humidity', humidityModel],
  ] as const)('of %s is plain JSON: read back anywhere, it goes on to the last digit', (_, model) => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 10, max: 100, noNaN: true }), { minLength: 2, maxLength: 40 }),
        fc.nat(),
        (values, at) => {
          const cut = at % values.length;
          const kept = follow(values, model);
          const half =
            cut === 0 ? noMixture : (JSON.parse(JSON.stringify(follow(values.slice(0, cut), model))) as Mixture);
          expect(follow(values.slice(cut), model, half)).toEqual(kept);
        },
      ),
    );
  });

  it('does not grow', () => {
    expect(JSON.stringify(follow(Array.from({ length: 5000 }, (_, i) => 24 + Math.sin(i)))).length).toBeLessThan(1000);
  });
});
