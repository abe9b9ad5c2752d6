import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectCondensation, type FilmScene } from '../../../shared/air/condensation.ts';

const exact = { temperature: 0, humidity: 0 };
const scene = (given: Partial<FilmScene>): FilmScene => ({
  temperature: 25,
  humidity: 95,
  filmTemperature: null,
  houseTemperature: null,
  ...given,
});
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('with a film probe', () => {
  // 25 °C and 95 %RH: any surface 0.86 °C cooler is wet (computed, notes on published values).
  test.each([
    { filmTemperature: 22, expected: 'wet', why: 'three degrees cooler' },
    { filmTemperature: 23.5, expected: 'wet', why: 'clear of the ± of dew point and probe, 0.45 °C' },
    { filmTemperature: 23.9, expected: 'unknown', why: 'wet by the figures, within the ±' },
    { filmTemperature: 24.4, expected: 'unknown', why: 'dry by the figures, within the ±' },
    { filmTemperature: 24.8, expected: 'dry', why: 'clear on the other side' },
    { filmTemperature: 30, expected: 'dry', why: 'sun on the film' },
  ])(
    'a film of $filmTemperature °C over air of 25 °C and 95 %RH: $expected ($why)',
    ({ filmTemperature, expected }) => {
      expect(expectCondensation(scene({ filmTemperature }))).toMatchObject({ expected, basis: 'film probe' });
    },
  );

  test('the margin is the dew point less the film: zero at 0.86 °C below the air', () => {
    const { margin } = expectCondensation(scene({ filmTemperature: 25 - 0.86 }));
    expect(margin).toBeCloseTo(0, 2);
  });

  test.each([
    { filmTemperature: 24.1, expected: 'wet' },
    { filmTemperature: 24.2, expected: 'dry' },
  ])('without any uncertainty the dew point of 24.14 °C alone decides: $filmTemperature °C is $expected', (given) => {
    expect(expectCondensation(scene(given), exact).expected).toBe(given.expected);
  });

  test('house air is not asked when the film itself is measured', () => {
    const alone = expectCondensation(scene({ filmTemperature: 22 }));
    expect(expectCondensation(scene({ filmTemperature: 22, houseTemperature: 35 }))).toEqual(alone);
  });
});

describe('without a film probe', () => {
  test.each([
    { temperature: 25, humidity: 95, houseTemperature: 18, expected: 'wet', why: 'wet even if the film is half-way' },
    {
      temperature: 25,
      humidity: 95,
      houseTemperature: 23.2,
      expected: 'unknown',
      why: 'the film may be above 24.1 °C',
    },
    { temperature: 25, humidity: 70, houseTemperature: 23, expected: 'dry', why: 'the dew point is 19.1 °C' },
    { temperature: 22, humidity: 60, houseTemperature: 26, expected: 'dry', why: 'the film is warmer than the air' },
  ])(
    'air of $temperature °C, $humidity %RH in a house of $houseTemperature °C: $expected ($why)',
    ({ expected, why: _, ...air }) => {
      expect(expectCondensation(scene(air))).toMatchObject({ expected, basis: 'house air, an estimate' });
    },
  );

  test('the estimate is less sure than a probe that reads the same', () => {
    const probe = expectCondensation(scene({ filmTemperature: 21 }));
    const house = expectCondensation(scene({ houseTemperature: 21 }));
    expect(house.margin).toBe(probe.margin);
    expect(width(house)).toBeGreaterThan(width(probe) + 1);
  });
});

describe('where it cannot be told', () => {
  test.each([
    { given: {}, basis: 'nothing to tell by', why: 'neither film nor house is heard' },
    { given: { humidity: null, filmTemperature: 20 }, basis: 'film probe', why: 'no humidity in the chamber' },
    { given: { temperature: null, houseTemperature: 20 }, basis: 'house air, an estimate', why: 'no temperature' },
  ])('$why', ({ given, basis }) => {
    const nothing = { expected: 'unknown', margin: null, leastMargin: null, greatestMargin: null };
    expect(expectCondensation(scene(given))).toEqual({ ...nothing, basis });
  });

  test('perfectly dry air wets no film, and has no dew point to give a margin', () => {
    const dry = expectCondensation(scene({ humidity: 0, filmTemperature: 10 }));
    expect(dry).toMatchObject({ expected: 'dry', margin: null, basis: 'film probe' });
  });
});

describe('whatever the air', () => {
  const anyScene = fc.record({
    temperature: real(5, 45),
    humidity: real(5, 105),
    filmTemperature: real(0, 60),
    houseTemperature: real(0, 45),
  });

  test('the margin lies within its own range, and the word follows from the range', () => {
    fc.assert(
      fc.property(anyScene, fc.boolean(), (given, hasProbe) => {
        const told = expectCondensation(hasProbe ? given : { ...given, filmTemperature: null });
        const [least, middle, greatest] = [told.leastMargin ?? NaN, told.margin ?? NaN, told.greatestMargin ?? NaN];
        expect(least).toBeLessThanOrEqual(middle);
        expect(middle).toBeLessThanOrEqual(greatest);
        expect(told.expected).toBe(least > 0 ? 'wet' : greatest < 0 ? 'dry' : 'unknown');
      }),
    );
  });

  test('a cooler film is never drier', () => {
    const rank = { dry: 0, unknown: 1, wet: 2 };
    fc.assert(
      fc.property(anyScene, real(0, 10), (given, cooler) => {
        const before = rank[expectCondensation(given).expected];
        const after = rank[expectCondensation({ ...given, filmTemperature: given.filmTemperature - cooler }).expected];
        expect(after).toBeGreaterThanOrEqual(before);
      }),
    );
  });
});

function width({ leastMargin, greatestMargin }: { leastMargin: number | null; greatestMargin: number | null }): number {
  return (greatestMargin ?? Number.NaN) - (leastMargin ?? Number.NaN);
}
