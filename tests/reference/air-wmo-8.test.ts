// The saturation formula of WMO-No. 8 (Guide to Instruments and Methods of Observation, annex 4.B) beside the ASHRAE one used here.
// Formula [R2], read second-hand; the table's figures [C], computed from it: a check of the stated difference, not of nature.
import { describe, expect, test } from 'vitest';
import { saturationKpa } from '../../shared/air/vapour.ts';

/** 6.112·exp(17.62 t/(243.12 + t)) hPa [R2]. */
function saturationWmo8(t: number): number {
  return 0.6112 * Math.exp((17.62 * t) / (243.12 + t));
}

describe('WMO-No. 8 saturation pressure', () => {
  test.each([
    { t: 5, wmo: 0.8717, ashrae: 0.8725 },
    { t: 15, wmo: 1.7017, ashrae: 1.7054 },
    { t: 20, wmo: 2.3326, ashrae: 2.3388 },
    { t: 25, wmo: 3.1601, ashrae: 3.1692 },
    { t: 28, wmo: 3.7711, ashrae: 3.7822 },
    { t: 30, wmo: 4.2337, ashrae: 4.246 },
    { t: 35, wmo: 5.6128, ashrae: 5.6278 },
  ])('at $t °C the WMO form gives $wmo kPa [C], ours $ashrae kPa [C]: at most 0.3 % above it', ({ t, wmo, ashrae }) => {
    expect(saturationWmo8(t)).toBeCloseTo(wmo, 4);
    expect(saturationKpa(t)).toBeCloseTo(ashrae, 4);
    const excess = saturationKpa(t) / wmo - 1;
    expect(excess).toBeGreaterThan(0);
    expect(excess).toBeLessThan(0.003);
  });
});
