// When a limit is reached: sure lines have a known answer, and every interval is in order.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TrendModel } from '../../../shared/forecast/local-linear-trend.ts';
import { chanceAfter, timeToLimit, type WatchedLimit } from '../../../shared/forecast/time-to-limit.ts';
import type { Mixture, MixtureModel } from '../../../shared/forecast/trend-mixture.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const START_MS = Date.parse('2026-03-02T12:00:00Z');
const HIGH: WatchedLimit = { limit: 28, side: 'high' };

const lasting: TrendModel = {
  readingSd: 0.01,
  levelWalk: 0,
  slopeWalk: 0.002,
  slopeLastsMinutes: Infinity,
  firstSlopeSd: 0.1,
  longestGapMs: 15 * MINUTE_MS,
};
const model = (temper: TrendModel): MixtureModel => ({
  tempers: [temper],
  remembersMinutes: 20,
  openMind: 0.02,
  longestGapMs: 15 * MINUTE_MS,
});

function standing(level: number, slopePerMinute: number, sd = 0.001): Mixture {
  const trend = { timeMs: START_MS, level, slopePerMinute, levelVariance: sd ** 2, covariance: 0, slopeVariance: 1e-8 };
  return { timeMs: START_MS, value: level, trends: [{ trend, weight: 1 }] };
}

describe('timeToLimit', () => {
  it('of a sure line is where the line gets there, the interval around it', () => {
    const { minutes, low, high, asOfMs, limit } = timeToLimit(standing(26.8, 0.1), model(lasting), HIGH, 30);
    expect({ asOfMs, limit }).toEqual({ asOfMs: START_MS, limit: 28 });
    expect(minutes).toBeCloseTo(12, 1);
    expect(low).toBeLessThan(12);
    expect(high).toBeGreaterThan(12);
  });

  it('follows a slope that fades: 1.2 °C at 0.2 a minute that lasts 12 minutes takes 12·ln 2', () => {
    const fading = { ...lasting, slopeWalk: 0.001, slopeLastsMinutes: 12 };
    expect(timeToLimit(standing(26.8, 0.2), model(fading), HIGH, 30).minutes).toBeCloseTo(12 * Math.LN2, 1);
    // A slope that fades before it gets there does not.
    expect(timeToLimit(standing(26.8, 0.09), model(fading), HIGH, 30).minutes).toBeNull();
  });

  it('falls to a low limit as it rises to a high one', () => {
    const up = timeToLimit(standing(26.8, 0.1), model(lasting), HIGH, 30);
    const down = timeToLimit(standing(-26.8, -0.1), model(lasting), { limit: -28, side: 'low' }, 30);
    expect(down).toEqual({ ...up, limit: -28 });
  });

  it('names no time where there is none in two hours', () => {
    const cooling = timeToLimit(standing(24, -0.1), model(lasting), HIGH, 30);
    expect(cooling).toMatchObject({ minutes: null, low: null, high: null });
    expect(cooling.probability).toBeLessThan(0.001);
  });

  it('is now where the limit is passed already, and not yet where it is only met', () => {
    const beyond = timeToLimit(standing(28.01, -0.2), model(lasting), HIGH, 30);
    expect(beyond).toMatchObject({ probability: 1, minutes: 0, low: 0, high: 0 });
    expect(timeToLimit(standing(28, -0.2), model(lasting), HIGH, 30).probability).toBeLessThan(0.01);
  });

  it('gives an interval in order, in which the chances are what they say', () => {
    const level = fc.double({ min: 22, max: 28, noNaN: true });
    const slope = fc.double({ min: -0.3, max: 0.6, noNaN: true });
    const sd = fc.double({ min: 0.01, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(level, slope, sd, (from, perMinute, spread) => {
        const mixture = standing(from, perMinute, spread);
        const temper = model({ ...lasting, slopeWalk: 0.02, slopeLastsMinutes: 15, levelWalk: 0.05 });
        const { low, minutes, high } = timeToLimit(mixture, temper, HIGH, 30);
        const times = [low, minutes, high].map((one) => one ?? Infinity);
        expect(times).toEqual(times.toSorted((a, b) => a - b));
        [low, minutes, high].forEach((time, i) => {
          if (time !== null && time > 0.25)
            expect(chanceAfter(mixture, temper, HIGH, time)).toBeCloseTo([0.1, 0.5, 0.9][i] ?? 0, 1);
        });
      }),
    );
  });

  it('is likelier the nearer the limit', () => {
    const chances = [25, 26, 27, 27.9].map((level) =>
      chanceAfter(standing(level, 0.05, 0.3), model(lasting), HIGH, 20),
    );
    expect(chances).toEqual(chances.toSorted((a, b) => a - b));
  });

  it('weighs the tempers by their belief', () => {
    const two: MixtureModel = { ...model(lasting), tempers: [lasting, lasting] };
    const [rising, falling] = [standing(27, 0.1), standing(27, -0.1)].map(({ trends }) => trends[0]?.trend);
    if (rising === undefined || falling === undefined) throw new Error('there are two trends');
    const mixture = {
      timeMs: START_MS,
      value: 27,
      trends: [
        { trend: rising, weight: 0.3 },
        { trend: falling, weight: 0.7 },
      ],
    };
    expect(chanceAfter(mixture, two, HIGH, 20)).toBeCloseTo(0.3, 6);
  });
});
