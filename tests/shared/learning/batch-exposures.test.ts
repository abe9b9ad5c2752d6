import { describe, expect, it } from 'vitest';
import type { PartExposure } from '../../../shared/exposure/part-exposure.ts';
import { batchExposures, exposureNames } from '../../../shared/learning/batch-exposures.ts';
import { HOUR_MS } from '../../../shared/units.ts';

function part(fromHours: number, toHours: number, given: Partial<PartExposure> = {}): PartExposure {
  const inside = { insideHours: 0, judgedHours: 0, share: null };
  return {
    fromMs: fromHours * HOUR_MS,
    toMs: toHours * HOUR_MS,
    temperature: { mean: 22, min: 20, max: 27 },
    humidity: { mean: 95, min: 90, max: 99 },
    minutesAbove: {},
    degreeHoursAbove: { '28': 0 },
    unknownHours: 0,
    vpdHours: 0,
    insideCorridor: { temperature: inside, humidity: inside },
    ...given,
  };
}

const days = [1, 2, 3, 4].map((day) => ({ day, ...part(24 * (day - 1), 24 * day, { vpdHours: day }) }));

describe('the exposures batches are compared by', () => {
  it('are the fixed few, each from its own part of the time', () => {
    const humidity = { insideHours: 72, judgedHours: 96, share: 0.75 };
    const whole = part(0, 96, {
      ...{ temperature: { mean: 23, min: 19, max: 31 }, degreeHoursAbove: { '28': 4 } },
      insideCorridor: { temperature: { insideHours: 0, judgedHours: 0, share: null }, humidity },
    });
    const exposures = batchExposures({ days, whole });
    expect(Object.keys(exposures)).toEqual([...exposureNames]);
    expect(exposures).toEqual({
      'degree-hours-above-28': 4,
      'highest-temperature': 31,
      'mean-temperature': 23,
      'vpd-hours-first-three-days': 1 + 2 + 3,
      'hours-outside-humidity-corridor': 24,
    });
  });

  it.each([
    { unknownHours: 0, degreeHours: 8, why: 'all is known' },
    { unknownHours: 9.6, degreeHours: 8.9, why: 'a tenth is unknown: taken to have been as the rest' },
    { unknownHours: 19.2, degreeHours: 10, why: 'just not too much' },
    { unknownHours: 19.21, degreeHours: null, why: 'too much is unknown' },
    { unknownHours: 96, degreeHours: null, why: 'nothing is known' },
  ])('with $unknownHours of 96 hours unknown, degree-hours are $degreeHours: $why', ({ unknownHours, degreeHours }) => {
    const whole = part(0, 96, { unknownHours, degreeHoursAbove: { '28': 8 } });
    const found = batchExposures({ days, whole })['degree-hours-above-28'];
    expect(found).toBe(degreeHours);
  });

  it.each([
    { count: 2, why: 'the third day was not reached', isKnown: false },
    { count: 3, why: 'three days are there', isKnown: true },
  ])('VPD-hours of the first three days: $why', ({ count, isKnown }) => {
    const found = batchExposures({ days: days.slice(0, count), whole: part(0, 24 * count) });
    expect(found['vpd-hours-first-three-days'] !== null).toBe(isKnown);
  });

  it('batches that differ by less than a probe can tell are equal', () => {
    const warm = (mean: number) =>
      batchExposures({ days, whole: part(0, 96, { temperature: { mean, min: 20, max: 27 } }) })['mean-temperature'];
    expect(warm(22.96)).toBe(warm(23.04));
    expect(warm(23.06)).not.toBe(warm(23.04));
  });

  it('nothing is known of a batch that was never closed', () => {
    expect(Object.values(batchExposures({ days: [], whole: null }))).toEqual(exposureNames.map(() => null));
  });
});
