// ASHRAE Handbook – Fundamentals 2017, chapter 1: tables and example 1, read second-hand [R2] in the tests of psychrolib
// (psychrometrics/psychrolib, tests/test_psychrolib_si.py), and psychrolib 1.1.1 itself as a reference library.
import psychrolib from 'psychrolib';
import { beforeAll, describe, expect, test } from 'vitest';
import { describeAir } from '../../shared/air/describe-air.ts';
import { pressureAtAltitudeKpa } from '../../shared/air/standard-atmosphere.ts';
import { dewPoint, humidityRatio, saturationKpa, vpdKpa } from '../../shared/air/vapour.ts';
import { wetBulb } from '../../shared/air/wet-bulb.ts';

const SEA_LEVEL_KPA = 101.325;

function relativeError(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

describe('ASHRAE Fundamentals 2017 chapter 1', () => {
  test.each([
    { t: 5, pa: 872.6 },
    { t: 25, pa: 3169.7 },
    { t: 50, pa: 12351.3 },
    { t: 100, pa: 101418 },
  ])('table 3 [R2]: saturation at $t °C is $pa Pa within the 300 ppm ASHRAE states', ({ t, pa }) => {
    expect(relativeError(saturationKpa(t) * 1000, pa)).toBeLessThan(300e-6);
  });

  test.each([
    { t: 5, ratio: 0.005425, tolerance: 0.005 },
    { t: 25, ratio: 0.020173, tolerance: 0.005 },
    { t: 50, ratio: 0.086863, tolerance: 0.01 },
  ])(
    'table 2 [R2]: saturated air at $t °C carries $ratio kg/kg; the table adds the enhancement factor left out here',
    (row) => {
      expect(relativeError(humidityRatio(saturationKpa(row.t), SEA_LEVEL_KPA), row.ratio)).toBeLessThan(row.tolerance);
    },
  );

  test.each([
    { altitudeM: -500, pa: 107478 },
    { altitudeM: 0, pa: 101325 },
    { altitudeM: 500, pa: 95461 },
    { altitudeM: 1000, pa: 89875 },
    { altitudeM: 4000, pa: 61640 },
  ])('table 1 [R2]: the standard pressure at $altitudeM m is $pa Pa, to 1 Pa', ({ altitudeM, pa }) => {
    expect(Math.abs(pressureAtAltitudeKpa(altitudeM) * 1000 - pa)).toBeLessThan(1);
  });

  test('humidity ratio of 3169.7 Pa vapour in 95461 Pa is 0.02136040 [R2, there from a spreadsheet]', () => {
    expect(relativeError(humidityRatio(3.1697, 95.461), 0.0213603998047489)).toBeLessThan(1e-6);
  });

  test('example 1 [R2]: 40 °C with a wet bulb of 20 °C at 101325 Pa is W 0.0065, dew point 7 °C, 14 %RH', () => {
    let [low, high] = [0, 100];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (wetBulb(40, middle, SEA_LEVEL_KPA) > 20) high = middle;
      else low = middle;
    }
    expect(Math.round(low)).toBe(14);
    const air = describeAir({ temperature: 40, humidity: low, altitudeM: 0 });
    // The handbook rounds what it reads off its chart; the tolerances are those of psychrolib's own check of it.
    expect(Math.abs(air.humidityRatio - 0.0065)).toBeLessThan(0.0001);
    expect(Math.abs((air.dewPoint ?? Number.NaN) - 7)).toBeLessThan(0.5);
  });
});

describe('psychrolib 1.1.1 over 0–50 °C, 5–100 %RH, at sea level and 1500 m', () => {
  beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

  const temperatures = Array.from({ length: 26 }, (_, i) => i * 2);
  const humidities = Array.from({ length: 20 }, (_, i) => 5 + i * 5);
  const points = temperatures.flatMap((t) => humidities.map((h) => ({ t, h })));
  /** It changes over to ice at the triple point, which is out of scope here. */
  const ICE_BELOW = 0.01;
  /** How closely psychrolib halves for dew point and wet bulb, °C. */
  const ITS_TOLERANCE = 0.001;

  test('saturation and vapour pressure are the same', () => {
    for (const { t, h } of points.filter((point) => point.t > ICE_BELOW)) {
      const air = describeAir({ temperature: t, humidity: h, altitudeM: 0 });
      expect(relativeError(air.saturationKpa * 1000, psychrolib.GetSatVapPres(t))).toBeLessThan(1e-9);
      expect(relativeError(air.vapourKpa * 1000, psychrolib.GetVapPresFromRelHum(t, h / 100))).toBeLessThan(1e-9);
    }
  });

  test.each([0, 1500])('humidity ratio and vapour pressure deficit are the same at %i m', (altitudeM) => {
    const pressurePa = psychrolib.GetStandardAtmPressure(altitudeM);
    for (const { t, h } of points.filter((point) => point.t > ICE_BELOW)) {
      const ratio = psychrolib.GetHumRatioFromRelHum(t, h / 100, pressurePa);
      expect(relativeError(describeAir({ temperature: t, humidity: h, altitudeM }).humidityRatio, ratio)).toBeLessThan(
        1e-9,
      );
      const deficitPa = psychrolib.GetVaporPressureDeficit(t, ratio, pressurePa);
      expect(Math.abs(vpdKpa(t, h) * 1000 - deficitPa)).toBeLessThan(1e-6);
    }
  });

  test('dew points above freezing are the same, to its own tolerance', () => {
    let compared = 0;
    for (const { t, h } of points) {
      const theirs = psychrolib.GetTDewPointFromRelHum(t, h / 100);
      if (theirs <= ICE_BELOW) continue;
      const ours = dewPoint(describeAir({ temperature: t, humidity: h, altitudeM: 0 }).vapourKpa);
      expect(Math.abs((ours ?? Number.NaN) - theirs)).toBeLessThan(ITS_TOLERANCE);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(300);
  });

  test.each([0, 1500])('wet bulbs above freezing are the same at %i m, to its own tolerance', (altitudeM) => {
    const pressurePa = psychrolib.GetStandardAtmPressure(altitudeM);
    let compared = 0;
    for (const { t, h } of points) {
      const theirs = psychrolib.GetTWetBulbFromRelHum(t, h / 100, pressurePa);
      if (theirs <= ICE_BELOW) continue;
      expect(Math.abs(wetBulb(t, h, pressurePa / 1000) - theirs)).toBeLessThan(ITS_TOLERANCE);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(400);
  });
});
