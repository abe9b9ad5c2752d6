// The checks of a batch: what a person must look at, and when it is due by the plan. It keeps no answers.
import { HOUR_MS, MINUTE_MS } from '../units.ts';
import { type BatchTimes, planStages, type StageSpan, stageAt } from './batch-clock.ts';
import { clockMsAt, type HealingClock, healingClock, instantOfClockMs } from './healing-clock.ts';
import type { CheckPlan, ProfileDocument, StageName } from './profile.ts';
import { firstTimeOfDayAtOrAfter } from './time-of-day.ts';

/** Checks that repeat more often than this are taken to repeat this often: nobody looks every minute. */
export const SHORTEST_REPEAT_HOURS = 0.25;

/** One occasion on which one check is to be answered. */
export interface PlannedCheck {
  /** The check's id and the number of the occasion, `scions-erect.2`: unique in the batch, the same however holds and moves shift it. */
  readonly checkId: string;
  /** The id of the check in the profile. */
  readonly id: string;
  readonly question: string;
  /** What to do first when the answer is no. */
  readonly ifNo: string;
  /** The log entry that says the same as a yes. */
  readonly sameAs?: 'erect' | 'film-wet';
  readonly dueMs: number;
  readonly overdueMs: number;
  /** The stage in which it is due. */
  readonly stage: StageName;
}

export type CheckStatus = 'to-come' | 'due' | 'overdue' | 'answered';

/**
 * Every check of a batch in order of time, with the holds and moves known at `asOfMs`. Hours count on the healing clock from closing or from
 * the start of the check's stage (in loading: plain hours from opening), then comes the first `notBefore`. A check belongs to its stage, or
 * to the time from closing to the end of the plan: occasions at or after the end of that do not arise. Before closing there are only the
 * checks of loading, repeated up to the first after `asOfMs`.
 */
export function plannedChecks(document: ProfileDocument, times: BatchTimes, asOfMs: number): PlannedCheck[] {
  const spans = planStages(document, times, asOfMs);
  const clock = healingClock(times, asOfMs);
  const occasions = document.checks.flatMap((plan) => {
    const window = windowOf(plan, spans, clock, times.zone);
    return window === null ? [] : occasionsOf(plan, spans, window, asOfMs);
  });
  return occasions.sort((a, b) => a.dueMs - b.dueMs);
}

/** Where a check stands: it is due from `dueMs` on and overdue from `overdueMs` on, unless it has any answer. */
export function checkStatus(check: PlannedCheck, answer: object | null, nowMs: number): CheckStatus {
  if (answer !== null) return 'answered';
  if (nowMs < check.dueMs) return 'to-come';
  return nowMs < check.overdueMs ? 'due' : 'overdue';
}

/** When the occasions of a check may fall, and the instant a number of hours into that. */
interface Window {
  readonly endMs: number | null;
  readonly dueAfterMs: (hours: number) => number;
}

function windowOf(
  plan: CheckPlan,
  spans: readonly StageSpan[],
  clock: HealingClock | null,
  zone: string,
): Window | null {
  const span = plan.atStage === undefined ? wholePlan(spans, clock) : spans.find(({ stage }) => stage === plan.atStage);
  if (span === undefined) return null;
  const { startMs, endMs } = span;
  const instantAfter = (hours: number) =>
    plan.atStage === 'loading' || clock === null
      ? startMs + Math.round(hours * HOUR_MS)
      : Math.max(startMs, instantOfClockMs(clock, clockMsAt(clock, startMs) + hours * HOUR_MS));
  const { notBefore } = plan;
  const settle = (ms: number) => (notBefore === undefined ? ms : firstTimeOfDayAtOrAfter(ms, notBefore, zone));
  return { endMs, dueAfterMs: (hours) => settle(instantAfter(hours)) };
}

function wholePlan(
  spans: readonly StageSpan[],
  clock: HealingClock | null,
): Pick<StageSpan, 'startMs' | 'endMs'> | undefined {
  const last = spans.at(-1);
  return clock === null || last === undefined ? undefined : { startMs: clock.closedMs, endMs: last.endMs };
}

function occasionsOf(
  plan: CheckPlan,
  spans: readonly StageSpan[],
  { endMs, dueAfterMs }: Window,
  asOfMs: number,
): PlannedCheck[] {
  const found: PlannedCheck[] = [];
  let hours = plan.afterHours ?? 0;
  for (let number = 1; ; number++) {
    const dueMs = dueAfterMs(hours);
    if (endMs !== null && dueMs >= endMs) break;
    // Two occasions that `notBefore` brings together are one.
    if (found.at(-1)?.dueMs !== dueMs) found.push(occasion(plan, number, dueMs, spans));
    if (plan.everyHours === undefined || (endMs === null && dueMs > asOfMs)) break;
    hours += Math.max(plan.everyHours, SHORTEST_REPEAT_HOURS);
    if (hours > (plan.untilHours ?? Infinity)) break;
  }
  return found;
}

function occasion(plan: CheckPlan, number: number, dueMs: number, spans: readonly StageSpan[]): PlannedCheck {
  const { id, question, ifNo, sameAs, overdueMinutes } = plan;
  const stage = stageAt(spans, dueMs)?.stage ?? plan.atStage ?? 'closed';
  return {
    checkId: `${id}.${number}`,
    id,
    question,
    ifNo,
    ...(sameAs !== undefined && { sameAs }),
    dueMs,
    overdueMs: dueMs + overdueMinutes * MINUTE_MS,
    stage,
  };
}
