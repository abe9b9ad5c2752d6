// Wet: the shown humidity above the high limit, long after a step of venting should have brought it down.
import { MINUTE_MS } from '../../units.ts';
import { judgeBeyond, nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

export const wet: Rule = {
  id: 'wet',
  priority: ['low', 'medium'],
  worse: 1,
  isSuppressible: true,
  onDelayMs: [30 * MINUTE_MS, 30 * MINUTE_MS],
  offDelayMs: 5 * MINUTE_MS,
  deadband: 2,
  judge({ corridor, climate }, held) {
    if (corridor === null) return [nothingBeyond];
    const { high, highHigh } = corridor.humidity;
    // Air cannot be wetter than saturated: a limit of 100 means "not watched", and a wet sensor reading 101 is not an alarm.
    if (high >= 100) return [nothingBeyond];
    return [
      judgeBeyond(climate.humidity, held(null), {
        limit: high,
        outer: highHigh,
        worse: 1,
        deadband: this.deadband ?? 0,
      }),
    ];
  },
};
