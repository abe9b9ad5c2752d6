// The worst value of a condition: which of several lies furthest beyond the limit.
import type { Alarm } from './alarm.ts';
import type { Judgement, RuleTraits } from './rules/rule.ts';
import type { Worst } from './watch-state.ts';

/** The worst of what was seen, by the direction of the rule; of two alike the earlier in the list, null when nothing was. */
export function worst(rule: Pick<RuleTraits, 'worse'>, seen: readonly (Worst | null)[]): Worst | null {
  return seen.reduce<Worst | null>((a, b) => {
    if (a === null || b === null) return a ?? b;
    return rule.worse * (b.value - a.value) > 0 ? b : a;
  }, null);
}

/** What a judgement shows of the condition: its value while that is beyond the limit. */
export function worstSeen({ level, value }: Judgement, nowMs: number): Worst | null {
  return level === 0 || level === 'unknown' || value === null ? null : { value, atMs: nowMs };
}

/** The peak of an alarm as the worst seen so far. */
export function peakOf({ peak, peakMs }: Alarm): Worst | null {
  return peak === null || peakMs === null ? null : { value: peak, atMs: peakMs };
}
