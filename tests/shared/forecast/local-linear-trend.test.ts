// The filter of level and slope against cases with a known answer: constants, exact lines, regression, steady gains, and composition.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advanceTrend,
  type Measurement,
  noTrend,
  type Trend,
  type TrendModel,
  updateTrend,
} from '../../../shared/forecast/local-linear-trend.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const START_MS = Date.parse('2026-03-02T07:00:00Z');
const fading: TrendModel = {
  readingSd: 0.1,
  levelWalk: 0.05,
  slopeWalk: 0.02,
  slopeLastsMinutes: 12,
  firstSlopeSd: 0.05,
  longestGapMs: 15 * MINUTE_MS,
};
/** A straight line and nothing else: the least-squares line through all readings. */
const straight: TrendModel = { ...fading, levelWalk: 0, slopeWalk: 0, slopeLastsMinutes: Infinity, firstSlopeSd: 1e4 };

const at = (minutes: number, value: number): Measurement => ({ timeMs: START_MS + minutes * MINUTE_MS, value });

function follow(measured: readonly Measurement[], model: TrendModel): Trend {
  const trend = measured.reduce((memory, one) => updateTrend(memory, one, model), noTrend);
  if (trend === null) throw new Error('a trend begins with its first reading');
  return trend;
}

describe('a trend', () => {
  it('of constant readings is that constant, without a slope, and surer with each', () => {
    const some = follow(
      Array.from({ length: 10 }, (_, i) => at(i, 21.5)),
      fading,
    );
    const more = follow(
      Array.from({ length: 60 }, (_, i) => at(i, 21.5)),
      fading,
    );
    expect(more.level).toBeCloseTo(21.5, 12);
    expect(more.slopePerMinute).toBeCloseTo(0, 12);
    expect(more.levelVariance).toBeLessThanOrEqual(some.levelVariance);
    expect(more.levelVariance).toBeGreaterThan(0);
  });

  it('of an exact line at uneven steps is that line', () => {
    const minutes = [0, 0.5, 2, 2.25, 6, 7, 11];
    const trend = follow(
      minutes.map((x) => at(x, 20 + 0.3 * x)),
      straight,
    );
    expect(trend.level).toBeCloseTo(20 + 0.3 * 11, 6);
    expect(trend.slopePerMinute).toBeCloseTo(0.3, 6);
  });

  it('that cannot bend is the least-squares line through all its readings', () => {
    const points: readonly [number, number][] = [
      [0, 20.1],
      [1, 20.0],
      [2.5, 20.6],
      [4, 20.4],
      [7, 21.3],
      [7.5, 21.0],
      [12, 22.2],
    ];
    const trend = follow(
      points.map(([x, y]) => at(x, y)),
      straight,
    );
    const meanX = points.reduce((sum, [x]) => sum + x, 0) / points.length;
    const meanY = points.reduce((sum, [, y]) => sum + y, 0) / points.length;
    const spread = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
    const slope = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) / spread;
    expect(trend.slopePerMinute).toBeCloseTo(slope, 5);
    expect(trend.level).toBeCloseTo(meanY + slope * (12 - meanX), 5);
    // Its variances are those of the regression: σ²/Sxx, and σ²(1/n + (x−x̄)²/Sxx).
    expect(trend.slopeVariance).toBeCloseTo(0.1 ** 2 / spread, 6);
    expect(trend.levelVariance).toBeCloseTo(0.1 ** 2 * (1 / points.length + (12 - meanX) ** 2 / spread), 6);
  });
});

describe('the steady gain', () => {
  /** Gains that the filter settles at when readings come every minute: how far one reading moves level and slope. */
  function steadyGains(model: TrendModel): { level: number; slope: number } {
    const settled = follow(
      Array.from({ length: 4000 }, (_, i) => at(i, 0)),
      model,
    );
    const moved = updateTrend(settled, at(4000, 1), model);
    return { level: moved?.level ?? 0, slope: moved?.slopePerMinute ?? 0 };
  }

  it('of a level that only wanders is that of exponential smoothing', () => {
    // Local level model, q = variance of a step over that of a reading: K = (q + √(q² + 4q)) / (2 + q + √(q² + 4q)) (Muth 1960, from memory).
    const model = { ...fading, levelWalk: 0.03, slopeWalk: 0, firstSlopeSd: 0 };
    const q = (0.03 / 0.1) ** 2;
    const root = Math.sqrt(q * q + 4 * q);
    expect(steadyGains(model).level).toBeCloseTo((q + root) / (2 + q + root), 9);
  });

  it('of a slope that wanders keeps the relation of the tracking filters', () => {
    // White-noise acceleration, T = 1: β = 3(2 − α) − √(3(α² − 12α + 12)) and q·T³/σ² = β²/(1 − α) (α–β filters, Bar-Shalom, from memory).
    const model = { ...fading, levelWalk: 0, slopeWalk: 0.05, slopeLastsMinutes: Infinity };
    const { level: alpha, slope: beta } = steadyGains(model);
    expect(beta).toBeCloseTo(3 * (2 - alpha) - Math.sqrt(3 * (alpha ** 2 - 12 * alpha + 12)), 9);
    expect(beta ** 2 / (1 - alpha)).toBeCloseTo(0.05 ** 2 / 0.1 ** 2, 9);
  });
});

describe('looking ahead', () => {
  const trend: Trend = {
    timeMs: START_MS,
    level: 25,
    slopePerMinute: 0.2,
    levelVariance: 0.01,
    covariance: 0.002,
    slopeVariance: 0.004,
  };

  it('bends toward level ground: a slope that lasts 12 minutes gains no more than 12 of it', () => {
    expect(advanceTrend(trend, 12, fading).slopePerMinute).toBeCloseTo(0.2 / Math.E, 12);
    expect(advanceTrend(trend, 1e6, fading).level).toBeCloseTo(25 + 12 * 0.2, 9);
    expect(advanceTrend(trend, 30, { ...fading, slopeLastsMinutes: Infinity }).level).toBeCloseTo(25 + 30 * 0.2, 12);
  });

  it('is the sum of many steps too small to matter', () => {
    // dP/dt = F·P + P·Fᵀ + Q by Euler's rule, with F = [0 1; 0 −1/τ] and Q = diag(levelWalk², slopeWalk²).
    let [p11, p12, p22] = [trend.levelVariance, trend.covariance, trend.slopeVariance];
    const step = 1e-4;
    for (let t = 0; t < 8 - step / 2; t += step) {
      const d11 = 2 * p12 + fading.levelWalk ** 2;
      const d12 = p22 - p12 / 12;
      const d22 = (-2 * p22) / 12 + fading.slopeWalk ** 2;
      [p11, p12, p22] = [p11 + step * d11, p12 + step * d12, p22 + step * d22];
    }
    const ahead = advanceTrend(trend, 8, fading);
    expect(ahead.levelVariance).toBeCloseTo(p11, 4);
    expect(ahead.covariance).toBeCloseTo(p12, 4);
    expect(ahead.slopeVariance).toBeCloseTo(p22, 5);
  });

  const minutes = fc.double({ min: 1e-6, max: 60, noNaN: true });
  it.each([
    ['fading', fading],
    ['lasting', { ...fading, slopeLastsMinutes: Infinity }],
  ] as const)('in two steps is looking ahead in one (%s)', (_, model) => {
    fc.assert(
      fc.property(minutes, minutes, (first, second) => {
        const twice = advanceTrend(advanceTrend(trend, first, model), second, model);
        const once = advanceTrend(trend, first + second, model);
        for (const key of ['level', 'slopePerMinute', 'levelVariance', 'covariance', 'slopeVariance'] as const)
          expect(Math.abs(twice[key] - once[key])).toBeLessThan(1e-9 * (1 + Math.abs(once[key])));
      }),
    );
  });

  it('is less and less sure', () => {
    fc.assert(
      fc.property(minutes, minutes, (first, more) => {
        const sooner = advanceTrend(trend, first, fading).levelVariance;
        expect(advanceTrend(trend, first + more, fading).levelVariance).toBeGreaterThanOrEqual(sooner);
      }),
    );
  });
});

describe('the memory', () => {
  const begun = follow([at(0, 20), at(1, 20.4)], fading);
  const nothingNew: readonly [string, Measurement][] = [
    ['a reading of the same instant', at(1, 30)],
    ['an older one', at(0.5, 30)],
    ['one that is no number', at(2, Number.NaN)],
    ['one without end', at(2, Infinity)],
  ];
  it.each(nothingNew)('is not changed by %s', (_, measured) => {
    expect(updateTrend(begun, measured, fading)).toBe(begun);
  });

  it('carries over a gap as long as allowed and begins anew after a longer one', () => {
    const fresh = updateTrend(noTrend, at(16.001, 25), fading);
    expect(updateTrend(begun, at(16, 25), fading)).not.toMatchObject({ level: 25 });
    expect(updateTrend(begun, at(16.001, 25), fading)).toEqual(fresh);
  });

  it('is plain JSON: read back anywhere, the trend goes on to the last digit, in the same few numbers', () => {
    const steps = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 1_200_000 }), fc.double({ min: 10, max: 40, noNaN: true })),
      { minLength: 2 },
    );
    fc.assert(
      fc.property(steps, fc.nat(), (given, cut) => {
        let [kept, restored] = [noTrend, noTrend];
        let timeMs = START_MS;
        given.forEach(([stepMs, value], i) => {
          timeMs += stepMs;
          kept = updateTrend(kept, { timeMs, value }, fading);
          restored = updateTrend(restored, { timeMs, value }, fading);
          if (i === cut % given.length) restored = JSON.parse(JSON.stringify(restored)) as typeof restored;
        });
        expect(restored).toEqual(kept);
        expect(Object.keys(kept ?? {})).toHaveLength(6);
      }),
    );
  });
});
