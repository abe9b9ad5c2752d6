// Dry: the driest healthy canopy probe below the low limit. A look into the tent dries it for a minute or two: the delay lets that pass.
import { MINUTE_MS } from '../../units.ts';
import { judgeBeyond, nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

export const dry: Rule = {
  id: 'dry',
  priority: ['high', 'critical'],
  worse: -1,
  isSuppressible: true,
  onDelayMs: [5 * MINUTE_MS, 5 * MINUTE_MS],
  offDelayMs: 2 * MINUTE_MS,
  // Wider than the sensor's own error near saturation (ours).
  deadband: 2,
  judge({ corridor, climate }, held) {
    if (corridor === null) return [nothingBeyond];
    const { low, lowLow } = corridor.humidity;
    return [
      judgeBeyond(climate.driest, held(null), { limit: low, outer: lowLow, worse: -1, deadband: this.deadband ?? 0 }),
    ];
  },
};
