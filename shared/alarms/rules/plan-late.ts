// Plan late: venting should have begun hours ago, and the chamber is as wet as if it had not. Scions that stay shut up stretch and root.
import { HOUR_MS, MINUTE_MS } from '../../units.ts';
import { judgeBeyond, nothingBeyond } from './beyond-limit.ts';
import type { Rule } from './rule.ts';

/** Air this wet is saturated as far as a probe can tell (97–98 % in a closed tent). */
const SATURATED = 98;
/** Where no gap is logged since venting began, air as wet as this is that of a closed tent; ours. */
const CLOSED_AIR = 95;

export const planLate: Rule = {
  id: 'plan-late',
  priority: ['medium', 'medium'],
  worse: 1,
  isSuppressible: true,
  // So long after venting should have begun (ours); `wet` says the same of a single step much earlier, on the screen only.
  onDelayMs: [3 * HOUR_MS, 3 * HOUR_MS],
  offDelayMs: 10 * MINUTE_MS,
  deadband: 2,
  judge({ care, corridor, climate }, held) {
    if (corridor === null || care === undefined || care.ventingSinceMs === null) return [nothingBeyond];
    const limit = Math.min(corridor.humidity.high, care.isGapOpen ? SATURATED : CLOSED_AIR);
    return [judgeBeyond(climate.humidity, held(null), { limit, outer: null, worse: 1, deadband: this.deadband ?? 0 })];
  },
};
