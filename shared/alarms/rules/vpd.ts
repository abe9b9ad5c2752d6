// VPD: the air of a closed chamber draws more water than a cut plant can give. A small VPD cannot be told from none with a usual probe, so
// it counts only where value less uncertainty is above the bound; the bound itself stands in the profile only.
import { accuracyInWetAir, airUncertainty, usualProbe } from '../../air/air-uncertainty.ts';
import { HOUR_MS, MINUTE_MS } from '../../units.ts';
import { judgeBeyond, nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

/** The film is to be wet three hours after closing: until then the bound of a stage is not held against it; ours. */
const SETTLES_MS = 3 * HOUR_MS;

export const vpd: Rule = {
  id: 'vpd',
  priority: ['medium', 'medium'],
  worse: 1,
  isSuppressible: true,
  // Slower than dryness, which it follows (ours).
  onDelayMs: [10 * MINUTE_MS, 10 * MINUTE_MS],
  offDelayMs: 5 * MINUTE_MS,
  // 2 %RH at 25 °C, the deadband of humidity.
  deadband: 0.06,
  judge({ nowMs, care, climate }, held) {
    const bound = care?.vpd ?? null;
    if (bound === null || nowMs - bound.sinceMs < SETTLES_MS) return [nothingBeyond];
    const { temperature, humidity, vpdKpa } = climate;
    const limits = { limit: bound.highKpa, outer: null, worse: 1, deadband: this.deadband ?? 0 } as const;
    if (temperature === null || humidity === null || vpdKpa === null) return [judgeBeyond(null, held(null), limits)];
    // Neither VPD nor its uncertainty depends on the altitude.
    const air = { temperature, humidity, altitudeM: 0 };
    const least = vpdKpa - airUncertainty(air, accuracyInWetAir(usualProbe)).vpdKpa;
    return [{ ...judgeBeyond(least, held(null), limits), value: vpdKpa }];
  },
};
