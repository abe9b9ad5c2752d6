// Check overdue: nobody has looked in time. Checks that fall due together are one alarm; one that is hours late is missed and left to the
// record, since an alarm that nobody can end any more only hides others.
import { HOUR_MS } from '../../units.ts';
import type { AlarmAbout } from '../alarm.ts';
import { type Judgement, noLimits, type Rule } from './rule.ts';
import type { SceneCheck } from './scene-care.ts';

/** From here on a check is missed; ours. */
const MISSED_AFTER_MS = 12 * HOUR_MS;

export const checkOverdue: Rule = {
  id: 'check-overdue',
  priority: ['medium', 'medium'],
  worse: 1,
  // The minutes that the profile allows are the delay.
  onDelayMs: [0, 0],
  offDelayMs: 0,
  judge({ nowMs, care }) {
    if (care === undefined || care.checks.length === 0) return [];
    const due = care.checks.filter(({ dueMs }) => dueMs <= nowMs);
    const knownMs = care.knownSinceMs;
    const late = due.filter((check) => isLate(check, nowMs, knownMs) && !due.some((other) => isNextOf(check, other)));
    const groups = Map.groupBy(late, ({ dueMs }) => dueMs);
    const judged = [...groups].map(([dueMs, checks]) => judgeGroup(dueMs, checks, due));
    // Newest last: of two groups of one name only that can still be done.
    return [...new Map(judged.map((one) => [one.about?.id, one])).values()];
  },
};

function isLate({ answer, overdueMs }: SceneCheck, nowMs: number, knownMs: number): boolean {
  return answer === null && overdueMs > knownMs && overdueMs <= nowMs && nowMs - overdueMs < MISSED_AFTER_MS;
}

function isNextOf(check: SceneCheck, other: SceneCheck): boolean {
  return other.id === check.id && other.dueMs > check.dueMs;
}

function judgeGroup(dueMs: number, late: readonly SceneCheck[], due: readonly SceneCheck[]): Judgement {
  const [first] = late;
  // Named after the first of the plan, answered or not, so that answering one of several does not make another alarm of the rest.
  const id = due.find((check) => check.dueMs === dueMs)?.id ?? '';
  const more = late.length - 1;
  const about: AlarmAbout = {
    id,
    question: first?.question ?? '',
    ifNo: first?.ifNo ?? '',
    ...(more > 0 && { more }),
  };
  const sinceMs = Math.min(...late.map(({ overdueMs }) => overdueMs));
  return { probeId: null, about, level: 1, value: null, limits: noLimits, sinceMs };
}
