import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeAir } from '../../../shared/air/describe-air.ts';
import { pressureAtAltitudeKpa } from '../../../shared/air/standard-atmosphere.ts';
import { wetBulb } from '../../../shared/air/wet-bulb.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyAir = fc.record({ temperature: real(0, 60), humidity: real(0.1, 100), altitudeM: real(-430, 5000) });

describe('describeAir', () => {
  test('dew point, wet bulb and temperature stand in this order', () => {
    fc.assert(
      fc.property(anyAir, (air) => {
        const state = describeAir(air);
        expect(state.dewPoint ?? Number.NaN).toBeLessThanOrEqual(state.wetBulb + 1e-9);
        expect(state.wetBulb).toBeLessThanOrEqual(air.temperature);
      }),
    );
  });

  test('every figure is finite and none but the temperatures is negative', () => {
    fc.assert(
      fc.property(anyAir, (air) => {
        const { dewPoint, wetBulb: bulb, ...amounts } = describeAir(air);
        for (const value of [dewPoint, bulb, ...Object.values(amounts)]) expect(Number.isFinite(value)).toBe(true);
        for (const value of Object.values(amounts)) expect(value).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('more humidity raises the wet bulb and the humidity ratio and lowers the deficit', () => {
    fc.assert(
      fc.property(anyAir, real(0.01, 1), (air, more) => {
        fc.pre(air.humidity + more <= 100);
        const [drier, wetter] = [describeAir(air), describeAir({ ...air, humidity: air.humidity + more })];
        expect(wetter.wetBulb).toBeGreaterThan(drier.wetBulb);
        expect(wetter.humidityRatio).toBeGreaterThan(drier.humidityRatio);
        expect(wetter.vpdKpa).toBeLessThan(drier.vpdKpa);
      }),
    );
  });

  test.each([100, 100.5, 110])(
    'at %d %RH the air is saturated: dew point and wet bulb are the temperature',
    (humidity) => {
      const state = describeAir({ temperature: 25, humidity, altitudeM: 0 });
      expect(state).toEqual(describeAir({ temperature: 25, humidity: 100, altitudeM: 0 }));
      expect(state.vpdKpa).toBe(0);
      expect(state.wetBulb).toBe(25);
      expect(state.dewPoint).toBeCloseTo(25, 9);
    },
  );

  test('perfectly dry air has no dew point, and still a wet bulb', () => {
    const state = describeAir({ temperature: 25, humidity: 0, altitudeM: 0 });
    expect(state).toMatchObject({ dewPoint: null, vapourKpa: 0, absoluteHumidityGm3: 0, humidityRatio: 0 });
    expect(state.wetBulb).toBeGreaterThan(5);
    expect(state.wetBulb).toBeLessThan(10);
  });

  test('saturated air of 25 °C holds 23.0 g of water to the cubic metre (computed from the ideal gas law)', () => {
    expect(describeAir({ temperature: 25, humidity: 100, altitudeM: 0 }).absoluteHumidityGm3).toBeCloseTo(23.03, 2);
  });

  test('altitude changes the humidity ratio and not the vapour', () => {
    const air = { temperature: 25, humidity: 90 };
    const [low, high] = [describeAir({ ...air, altitudeM: 0 }), describeAir({ ...air, altitudeM: 1500 })];
    expect(high.vpdKpa).toBe(low.vpdKpa);
    expect(high.dewPoint).toBe(low.dewPoint);
    expect(high.humidityRatio).toBeGreaterThan(low.humidityRatio * 1.15);
  });
});

test.each([
  { altitudeM: 50_000, like: 11_000 },
  { altitudeM: -50_000, like: -5_000 },
])('at $altitudeM m, outside the formula, the pressure is that of $like m', ({ altitudeM, like }) => {
  expect(pressureAtAltitudeKpa(altitudeM)).toBe(pressureAtAltitudeKpa(like));
});

test('the wet bulb ends even where the vapour would be steam', () => {
  expect(wetBulb(100, 99.99, 90)).toBeCloseTo(100, 6);
});
