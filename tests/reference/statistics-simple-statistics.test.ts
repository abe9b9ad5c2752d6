// Our statistics against a general-purpose library, simple-statistics 7.12.0 (ISC): Wilson's interval from its definition, straight lines by its
// regression, rank association on series where it must agree, medians and means.
import fc from 'fast-check';
import {
  bisect,
  cumulativeStdNormalProbability,
  linearRegression,
  linearRegressionLine,
  mean,
  median as medianOf,
  rSquared,
  sampleCorrelation,
  sampleRankCorrelation,
  standardDeviation,
} from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { createExposure } from '../../shared/exposure/exposure.ts';
import { normalBelow } from '../../shared/forecast/normal-below.ts';
import { kendallTau } from '../../shared/learning/rank-pairs.ts';
import { wilsonInterval, Z_95 } from '../../shared/learning/wilson-interval.ts';
import { median } from '../../shared/readings/median.ts';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { combineRates } from '../../shared/venting/combine-rates.ts';
import { projectWindow } from '../../shared/venting/project-window.ts';
import { fitRelaxation } from '../support/fit-relaxation.ts';
import { fitLine } from '../support/forecast-rivals.ts';

describe('Wilson’s interval', () => {
  it('stands at the normal quantile of the library’s table', () => {
    expect(cumulativeStdNormalProbability(Z_95)).toBe(0.975);
    for (const aside of [-0.01, 0.01]) expect(cumulativeStdNormalProbability(Z_95 + aside)).not.toBe(0.975);
  });

  it('ends where |share − p| is z standard errors of p, as the library finds those places by halving', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 5_000 }), fc.double({ min: 0, max: 1, noNaN: true }), (plants, share) => {
        const taken = Math.min(plants - 1, Math.max(1, Math.round(plants * share)));
        const observed = taken / plants;
        const surplus = (p: number) => Math.abs(observed - p) - Z_95 * Math.sqrt((p * (1 - p)) / plants);
        const found = wilsonInterval(taken, plants);
        expect(found?.low).toBeCloseTo(bisect(surplus, 0, observed, 200, 1e-13) as number, 9);
        expect(found?.high).toBeCloseTo(bisect(surplus, observed, 1, 200, 1e-13) as number, 9);
      }),
    );
  });
});

it('the normal distribution function is that of the library’s table', () => {
  for (let z = -3; z <= 3; z += 0.01)
    // The table is rounded to four digits and stepped by hundredths.
    expect(Math.abs(normalBelow(z) - cumulativeStdNormalProbability(z)), `z = ${z}`).toBeLessThan(2e-4);
});

/** Not in a line, and with as much scatter as signal. */
const points = fc.array(
  fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true })),
  { minLength: 4, maxLength: 60 },
);

describe('least squares', () => {
  it('through readings give the line of the library', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -20, max: 60, noNaN: true }), { minLength: 3, maxLength: 40 }),
        (values) => {
          const series = values.map((value, n) => ({ timeMs: n * MINUTE_MS + (n % 3) * 7_000, value }));
          const lastMs = series.at(-1)?.timeMs ?? 0;
          const { m, b } = linearRegression(series.map(({ timeMs, value }) => [(timeMs - lastMs) / MINUTE_MS, value]));
          const ours = fitLine(series);
          expect(ours?.perMinute).toBeCloseTo(m, 8);
          expect(ours?.value).toBeCloseTo(b, 8);
        },
      ),
    );
  });

  it('of a window at a given rate are the regression of its readings on how much of the start is left', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 4, maxLength: 40 }),
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        (values, ratePerHour) => {
          const hours = 0.1;
          const level = { hours, houseFrom: 0, houseTo: 0, driveFrom: 1, driveTo: 1 };
          const steps = values.slice(1).map((_, i) => ({ ...level, reading: i + 1 }));
          const { start, source } = projectWindow({ steps, values }, ratePerHour);
          // w = end + (start − end)·e^(−kt): a straight line over e^(−kt).
          const { m, b } = linearRegression(values.map((value, i) => [Math.exp(-ratePerHour * hours * i), value]));
          expect(source / ratePerHour).toBeCloseTo(b, 5);
          expect(start).toBeCloseTo(b + m, 5);
        },
      ),
    );
  });

  it('of rate and end together leave no more than any rate near by would, and say its r²', () => {
    const values = Array.from({ length: 60 }, (_, n) => {
      const scatter = 0.05 * Math.sin(n * 12.9898) * Math.cos(n * 78.233);
      return { timeMs: n * MINUTE_MS, value: 9 + 6 * Math.exp((-1.7 * n) / 60) + scatter };
    });
    const { relaxation } = fitRelaxation(values);
    if (relaxation === null) throw new Error('an hour of relaxation can be fitted');
    const pairsAt = (rate: number) =>
      values.map(({ timeMs, value }) => [Math.exp((-rate * timeMs) / HOUR_MS), value] as [number, number]);
    const r2At = (rate: number) => rSquared(pairsAt(rate), linearRegressionLine(linearRegression(pairsAt(rate))));
    expect(relaxation.r2).toBeCloseTo(r2At(relaxation.ratePerHour), 9);
    for (const other of [0.99, 1.01]) expect(r2At(relaxation.ratePerHour * other)).toBeLessThan(relaxation.r2);
    expect(relaxation.end).toBeCloseTo(linearRegression(pairsAt(relaxation.ratePerHour)).b, 9);
  });
});

describe('association by rank', () => {
  it('is complete, one way or the other, exactly where the library’s rank correlation is', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 30 }), (xs) => {
        const rising = xs.map((x) => x ** 3 + x);
        const falling = rising.map((y) => -y);
        expect(kendallTau(xs, rising)).toBe(1);
        expect(sampleRankCorrelation(xs, rising)).toBeCloseTo(1, 9);
        expect(kendallTau(xs, falling)).toBe(-1);
        expect(sampleRankCorrelation(xs, falling)).toBeCloseTo(-1, 9);
      }),
    );
  });

  it('is, ties included, the library’s correlation of which of two batches has more', () => {
    const listsOf = (n: number) => fc.array(fc.integer({ min: 0, max: 6 }), { minLength: n, maxLength: n });
    const lists = fc.integer({ min: 3, max: 20 }).chain((n) => fc.tuple(listsOf(n), listsOf(n)));
    // Over all ordered pairs the signs of the differences have mean 0, and τ-b is their product-moment correlation (Kendall 1945).
    const signs = (values: readonly number[]) => values.flatMap((a) => values.map((b) => Math.sign(a - b)));
    fc.assert(
      fc.property(lists, ([xs, ys]) => {
        fc.pre(new Set(xs).size > 1 && new Set(ys).size > 1);
        expect(kendallTau(xs, ys)).toBeCloseTo(sampleCorrelation(signs(xs), signs(ys)), 9);
      }),
    );
  });
});

describe('plain figures', () => {
  it('medians are those of the library', () => {
    fc.assert(
      fc.property(points, (all) => {
        const values = all.map(([value]) => value);
        expect(median(values)).toBeCloseTo(medianOf(values), 10);
      }),
    );
  });

  it('the time-weighted mean of evenly spaced readings is the library’s mean of the means of neighbours', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -20, max: 100, noNaN: true }), { minLength: 2, maxLength: 50 }),
        (values) => {
          const toMs = (values.length - 1) * MINUTE_MS;
          const exposure = createExposure({ fromMs: 0, toMs, silenceMs: MINUTE_MS, above: [] });
          values.forEach((value, n) => void exposure.add(n * MINUTE_MS, value));
          const between = values.slice(1).map((value, i) => mean([value, values[i] ?? Number.NaN]));
          expect(exposure.result().mean).toBeCloseTo(mean(between), 9);
        },
      ),
    );
  });

  it('rates of equal error without excess scatter combine to the library’s mean, with its standard error', () => {
    const rates = [1.9, 2, 2.1, 2.05, 1.95];
    const combined = combineRates(rates.map((ratePerHour) => ({ ratePerHour, rateError: 0.2 })));
    expect(standardDeviation(rates)).toBeLessThan(0.2);
    expect(combined.ratePerHour).toBeCloseTo(mean(rates), 12);
    expect(combined.rateError).toBeCloseTo(0.2 / Math.sqrt(rates.length), 12);
  });
});
