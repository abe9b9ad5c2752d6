// Worked examples of FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), chapter 3. FAO-56 uses its own forms of the
// saturation and pressure equations, so each row says how far they may lie from the ASHRAE forms used here.
// [R2] = read second-hand and worked through again.
import { describe, expect, test } from 'vitest';
import { describeAir } from '../../shared/air/describe-air.ts';
import { pressureAtAltitudeKpa } from '../../shared/air/standard-atmosphere.ts';
import { saturationKpa, vapourKpa } from '../../shared/air/vapour.ts';
import { wetBulb } from '../../shared/air/wet-bulb.ts';

/** FAO-56 eq. 11 [R2]. */
function saturationFao56(t: number): number {
  return 0.6108 * Math.exp((17.27 * t) / (t + 237.3));
}

/** FAO-56 eq. 15 with the coefficient of a ventilated (Asmann) psychrometer, 0.000662 per °C [from memory]. */
function vapourFromPsychrometer(dry: number, wet: number, pressure: number): number {
  return saturationFao56(wet) - 0.000662 * pressure * (dry - wet);
}

describe('FAO-56 worked examples', () => {
  test('example 2 [R2]: at 1800 m the pressure is 81.8 kPa, which stands 0.4 % above the ISA air of 15 °C at sea level', () => {
    // FAO-56 eq. 7 starts from 101.3 kPa and 20 °C at sea level, the ISA from 101.325 kPa and 15 °C.
    const fao = 101.3 * ((293 - 0.0065 * 1800) / 293) ** 5.26;
    expect(fao).toBeCloseTo(81.8, 1);
    const isa = pressureAtAltitudeKpa(1800);
    expect(isa).toBeLessThan(fao);
    expect(isa / fao).toBeGreaterThan(0.995);
  });

  test.each([
    { t: 24.5, kpa: 3.075, why: 'example 3, hottest of the day' },
    { t: 15, kpa: 1.705, why: 'example 3, coldest of the day' },
    { t: 19.5, kpa: 2.267, why: 'example 4, wet bulb' },
    { t: 18, kpa: 2.064, why: 'example 5, coldest of the day' },
    { t: 25, kpa: 3.168, why: 'example 5, hottest of the day' },
  ])('saturation at $t °C is $kpa kPa ($why [R2]), within 0.1 %', ({ t, kpa }) => {
    expect(saturationFao56(t)).toBeCloseTo(kpa, 3);
    expect(Math.abs(saturationKpa(t) / kpa - 1)).toBeLessThan(0.001);
  });

  test('example 3 [R2]: the mean saturation pressure of 24.5 and 15 °C is 2.39 kPa', () => {
    expect((saturationKpa(24.5) + saturationKpa(15)) / 2).toBeCloseTo(2.39, 2);
  });

  test('example 4 [R2]: dry 25.6 °C and wet 19.5 °C at 87.9 kPa mean a vapour pressure of 1.91 kPa, and back to the wet bulb', () => {
    const vapour = vapourFromPsychrometer(25.6, 19.5, 87.9);
    expect(vapour).toBeCloseTo(1.91, 2);
    const humidity = (100 * vapour) / saturationKpa(25.6);
    // The psychrometer's constant is an instrument's; the thermodynamic wet bulb may lie a tenth of a degree away.
    expect(Math.abs(wetBulb(25.6, humidity, 87.9) - 19.5)).toBeLessThan(0.1);
  });

  test('example 5 [R2]: 18 °C at 82 % and 25 °C at 54 % mean an actual vapour pressure of 1.70 kPa', () => {
    expect((vapourKpa(18, 82) + vapourKpa(25, 54)) / 2).toBeCloseTo(1.7, 2);
  });

  test('example 5 carried on: the description of the air holds the same vapour pressure', () => {
    expect(describeAir({ temperature: 18, humidity: 82, altitudeM: 0 }).vapourKpa).toBeCloseTo(2.064 * 0.82, 2);
  });
});
