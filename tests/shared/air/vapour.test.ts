import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dewPoint, humidityRatio, saturationKpa, vapourKpa, vpdKpa } from '../../../shared/air/vapour.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('saturation and dew point', () => {
  test('the dew point undoes the saturation pressure', () => {
    fc.assert(
      fc.property(real(-60, 120), (t) => {
        expect(Math.abs((dewPoint(saturationKpa(t)) ?? Number.NaN) - t)).toBeLessThan(1e-8);
      }),
    );
  });

  test('warmer air always holds more', () => {
    fc.assert(
      fc.property(real(-99, 199), real(0.001, 1), (t, more) => {
        expect(saturationKpa(t + more)).toBeGreaterThan(saturationKpa(t));
      }),
    );
  });

  test.each([
    { t: -400, like: -100, why: 'colder than the equation goes' },
    { t: 1e9, like: 200, why: 'hotter than the equation goes' },
  ])('at $t °C the pressure stays finite: $why', ({ t, like }) => {
    expect(saturationKpa(t)).toBe(saturationKpa(like));
    expect(Number.isFinite(saturationKpa(t))).toBe(true);
  });

  test.each([
    { kpa: 1e-300, like: -100, why: 'next to no vapour' },
    { kpa: 1e12, like: 200, why: 'more vapour than any air' },
  ])('the dew point at $kpa kPa stays finite: $why', ({ kpa, like }) => {
    expect(dewPoint(kpa)).toBeCloseTo(like, 6);
  });

  test.each([0, -1, Number.NaN])('there is no dew point at %s kPa', (kpa) => {
    expect(dewPoint(kpa)).toBeNull();
  });
});

describe('vapour pressure deficit', () => {
  test.each([
    { humidity: 100, vpd: 0, why: 'saturated' },
    { humidity: 104, vpd: 0, why: 'a wet sensor reads above 100, and the air is saturated' },
    { humidity: 0, vpd: saturationKpa(25), why: 'dry' },
    { humidity: -2, vpd: saturationKpa(25), why: 'below zero is dry too' },
  ])('at 25 °C and $humidity %RH: $why', ({ humidity, vpd }) => {
    expect(vpdKpa(25, humidity)).toBe(vpd);
  });

  test('97 and 98 %RH at 25 °C are 0.10 and 0.06 kPa (computed anchors of the healing climate)', () => {
    expect(vpdKpa(25, 97)).toBeCloseTo(0.095, 3);
    expect(vpdKpa(25, 98)).toBeCloseTo(0.063, 3);
  });

  test('air of 25 °C and 95 % warmed to 30 °C with the same vapour is 70.9 %RH and 1.235 kPa short (computed; 1.234 by the FAO-56 form)', () => {
    const vapour = vapourKpa(25, 95);
    expect((100 * vapour) / saturationKpa(30)).toBeCloseTo(70.9, 1);
    expect(saturationKpa(30) - vapour).toBeCloseTo(1.235, 3);
  });

  test('any surface 0.86 °C cooler than air of 25 °C and 95 % is wet (computed)', () => {
    expect(25 - (dewPoint(vapourKpa(25, 95)) ?? Number.NaN)).toBeCloseTo(0.86, 2);
  });
});

test('where vapour alone makes the whole pressure the humidity ratio is infinite', () => {
  expect(humidityRatio(101.3, 101.325)).toBeGreaterThan(1000);
  expect(humidityRatio(101.325, 101.325)).toBe(Number.POSITIVE_INFINITY);
});
