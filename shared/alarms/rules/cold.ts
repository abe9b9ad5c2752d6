// Cold: the coldest healthy canopy probe below the low limit. Slow harm, so a long delay.
import { MINUTE_MS } from '../../units.ts';
import { judgeBeyond, nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

export const cold: Rule = {
  id: 'cold',
  priority: ['medium', 'high'],
  worse: -1,
  isSuppressible: true,
  onDelayMs: [10 * MINUTE_MS, 10 * MINUTE_MS],
  offDelayMs: 5 * MINUTE_MS,
  deadband: 0.5,
  judge({ corridor, climate }, held) {
    if (corridor === null) return [nothingBeyond];
    const { low, lowLow } = corridor.temperature;
    return [
      judgeBeyond(climate.coldest, held(null), { limit: low, outer: lowLow, worse: -1, deadband: this.deadband ?? 0 }),
    ];
  },
};
