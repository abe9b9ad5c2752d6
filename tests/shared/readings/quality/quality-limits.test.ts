import { describe, expect, it } from 'vitest';
import { defaultQualityLimits, qualityLimitsSchema } from '../../../../shared/readings/quality/quality-limits.ts';

function withTemperature(change: object) {
  return { ...defaultQualityLimits, temperature: { ...defaultQualityLimits.temperature, ...change } };
}

describe('quality limits', () => {
  it('accept the defaults, unchanged', () => {
    expect(qualityLimitsSchema.parse(defaultQualityLimits)).toEqual(defaultQualityLimits);
  });

  const { grossRange, spike, flatLine } = defaultQualityLimits.temperature;
  it.each([
    ['a user span wider than the sensor span', { grossRange: { ...grossRange, userHigh: 90 } }],
    ['a user span upside down', { grossRange: { ...grossRange, userLow: 61 } }],
    ['a fail limit below the suspect limit', { spike: { ...spike, fail: 3.9 } }],
    ['a fail time below the suspect time', { flatLine: { ...flatLine, failMs: flatLine.suspectMs - 1 } }],
    ['an unknown method', { spike: { ...spike, method: 'guess' } }],
    ['a misspelt field', { spikes: spike }],
    ['a number that is none', { grossRange: { ...grossRange, userLow: Number.NaN } }],
  ])('refuse %s', (_why, change) => {
    expect(qualityLimitsSchema.safeParse(withTemperature(change)).success).toBe(false);
  });

  it('accept equal suspect and fail limits: then nothing is merely doubted', () => {
    const change = { spike: { ...spike, fail: spike.suspect }, flatLine: { ...flatLine, failMs: flatLine.suspectMs } };
    expect(qualityLimitsSchema.safeParse(withTemperature(change)).success).toBe(true);
  });
});
