import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  accuracyInWetAir,
  airUncertainty,
  fineProbe,
  type ProbeAccuracy,
  tellFromLimit,
  usualProbe,
} from '../../../shared/air/air-uncertainty.ts';
import { describeAir } from '../../../shared/air/describe-air.ts';
import { createNoiseStream } from '../../support/noise-stream.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the ± of computed air', () => {
  test.each([
    { temperature: 25, humidity: 50, why: 'the ± by humidity does not hang on the humidity' },
    { temperature: 25, humidity: 95, why: 'nor near saturation' },
  ])('±2 %RH is ±0.063 kPa of VPD at 25 °C, $humidity %RH: $why (computed, notes on published values)', (air) => {
    const { vpdKpa } = airUncertainty({ ...air, altitudeM: 0 }, { temperature: 0, humidity: 2 });
    expect(vpdKpa).toBeCloseTo(0.063, 3);
  });

  test('±2 %RH at 95 % is ±40 % of the VPD (notes on sensors in wet air)', () => {
    const air = { temperature: 25, humidity: 95, altitudeM: 0 };
    const { vpdKpa } = airUncertainty(air, { temperature: 0, humidity: 2 });
    expect(vpdKpa / describeAir(air).vpdKpa).toBeCloseTo(0.4, 3);
  });

  test('a temperature half a degree off moves 97 %RH at 25 °C as far as the VPD it makes says', () => {
    const { vpdKpa } = airUncertainty(
      { temperature: 25, humidity: 0, altitudeM: 0 },
      { temperature: 0.5, humidity: 0 },
    );
    const slopeOfFao56 = (4098 * 3.168) / (25 + 237.3) ** 2;
    expect(vpdKpa).toBeCloseTo(0.5 * slopeOfFao56, 3);
  });

  // Every combination keeps four standard deviations clear of 100 %RH: a clamp is not what first order describes.
  test.each([
    { temperature: 25, humidity: 60, altitudeM: 0, accuracy: usualProbe },
    { temperature: 22, humidity: 85, altitudeM: 0, accuracy: usualProbe },
    { temperature: 28, humidity: 95, altitudeM: 1500, accuracy: fineProbe },
    { temperature: 15, humidity: 40, altitudeM: 300, accuracy: usualProbe },
  ])('agrees within 2 % with 20 000 drawn readings at $temperature °C, $humidity %RH, $altitudeM m', (drawn) => {
    const spread = drawSpread(drawn, drawn.accuracy, 20_000);
    const first = airUncertainty(drawn, drawn.accuracy);
    expect(Math.abs(first.vpdKpa / spread.vpdKpa - 1)).toBeLessThan(0.02);
    expect(Math.abs((first.dewPoint ?? Number.NaN) / spread.dewPoint - 1)).toBeLessThan(0.02);
    expect(Math.abs(first.humidityRatio / spread.humidityRatio - 1)).toBeLessThan(0.02);
  });

  test('a more accurate probe is never worse', () => {
    fc.assert(
      fc.property(
        real(0, 45),
        real(1, 100),
        real(0, 1),
        real(0, 5),
        real(0, 1),
        (temperature, humidity, t, h, part) => {
          const air = { temperature, humidity, altitudeM: 0 };
          const coarse = airUncertainty(air, { temperature: t, humidity: h });
          const fine = airUncertainty(air, { temperature: t * part, humidity: h * part });
          expect(fine.vpdKpa).toBeLessThanOrEqual(coarse.vpdKpa);
          expect(fine.dewPoint ?? 0).toBeLessThanOrEqual(coarse.dewPoint ?? 0);
          expect(fine.humidityRatio).toBeLessThanOrEqual(coarse.humidityRatio);
        },
      ),
    );
  });

  test('perfectly dry air has no dew point to be uncertain of, and finite figures otherwise', () => {
    const dry = airUncertainty({ temperature: 25, humidity: 0, altitudeM: 0 }, usualProbe);
    expect(dry.dewPoint).toBeNull();
    expect(dry.humidityRatio).toBeGreaterThan(0);
    expect(Number.isFinite(dry.humidityRatio)).toBe(true);
  });

  test('above 100 %RH the air counts as saturated', () => {
    const at = (humidity: number) => airUncertainty({ temperature: 25, humidity, altitudeM: 0 }, usualProbe);
    expect(at(104)).toEqual(at(100));
  });

  test('hysteresis of 1 %RH comes on top in wet air, as the root of the sum of squares', () => {
    expect(accuracyInWetAir({ temperature: 0.2, humidity: 2 })).toEqual({ temperature: 0.2, humidity: Math.sqrt(5) });
  });

  test('the probes given are the two ends of what is usual (notes on sensors in wet air)', () => {
    expect(usualProbe).toEqual({ temperature: 0.2, humidity: 2 });
    expect(fineProbe).toEqual({ temperature: 0.1, humidity: 1 });
  });
});

describe('a value beside a limit', () => {
  test.each([
    { value: 0.76, plusMinus: 0.06, limit: 0.69, told: 'above', why: 'clear of the ±' },
    { value: 0.75, plusMinus: 0.25, limit: 0.5, told: 'cannot be resolved', why: 'the limit lies on the end of the ±' },
    { value: 0.25, plusMinus: 0.25, limit: 0.5, told: 'cannot be resolved', why: 'on the other end' },
    { value: 0.62, plusMinus: 0.06, limit: 0.69, told: 'below', why: 'clear below' },
    { value: 0.08, plusMinus: 0.063, limit: 0.1, told: 'cannot be resolved', why: 'a VPD near 0.1 kPa never can' },
    { value: 1, plusMinus: 0, limit: 1, told: 'cannot be resolved', why: 'exactly on it' },
    {
      value: 1,
      plusMinus: Number.NaN,
      limit: 0,
      told: 'cannot be resolved',
      why: 'a ± that is not known resolves nothing',
    },
  ])('$value ± $plusMinus against $limit: $told ($why)', ({ value, plusMinus, limit, told }) => {
    expect(tellFromLimit(value, plusMinus, limit)).toBe(told);
  });
});

/** Standard deviations of what is computed from readings drawn about the truth, temperature and humidity independently. */
function drawSpread(
  air: { temperature: number; humidity: number; altitudeM: number },
  accuracy: ProbeAccuracy,
  count: number,
) {
  const noise = createNoiseStream(2_911);
  const drawn = Array.from({ length: count }, () =>
    describeAir({
      temperature: air.temperature + accuracy.temperature * noise.normal(),
      humidity: air.humidity + accuracy.humidity * noise.normal(),
      altitudeM: air.altitudeM,
    }),
  );
  return {
    vpdKpa: deviationOf(drawn.map(({ vpdKpa }) => vpdKpa)),
    dewPoint: deviationOf(drawn.map(({ dewPoint }) => dewPoint ?? Number.NaN)),
    humidityRatio: deviationOf(drawn.map(({ humidityRatio }) => humidityRatio)),
  };
}

function deviationOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
