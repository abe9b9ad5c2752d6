// Heat: the hottest healthy canopy probe above the high limit (28 °C while closed), critical above the high-high limit (29 °C).
// Deadband and delays stand here; the limits themselves stand in the profile only.
import { MINUTE_MS, SECOND_MS } from '../../units.ts';
import { judgeBeyond, nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

export const heat: Rule = {
  id: 'heat',
  priority: ['high', 'critical'],
  worse: 1,
  // 60 s: the usual start for temperature (ISA-18.2, from memory). At the critical limit half of it: a tent gains up to 1 °C a minute in sun (ours).
  onDelayMs: [MINUTE_MS, 30 * SECOND_MS],
  offDelayMs: MINUTE_MS,
  deadband: 0.5,
  judge({ corridor, climate }, held) {
    if (corridor === null) return [nothingBeyond];
    const { high, highHigh } = corridor.temperature;
    return [
      judgeBeyond(climate.hottest, held(null), {
        limit: high,
        outer: highHigh,
        worse: 1,
        deadband: this.deadband ?? 0,
      }),
    ];
  },
};
