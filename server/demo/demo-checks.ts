// How the invented crew has answered the checks of a batch's plan. It takes whatever checks the profile plans; it knows no profile.
import { MINUTE_MS } from '../../shared/units.ts';

interface DueCheck {
  /** Of the check in the profile. */
  readonly id: string;
  readonly checkId: string;
  readonly dueMs: number;
}

export interface DemoCheckAnswer extends DueCheck {
  readonly answer: 'yes' | 'no';
  readonly answeredMs: number;
  readonly note: string;
  readonly person: string;
}

/** The crew gets to a check this long after it is due, so that one that has just fallen due is seen unanswered. */
const ANSWERED_AFTER_MS = 20 * MINUTE_MS;

/** Answers in the order of `checks`, leaving open what fell due less than 20 minutes before `untilMs`. `crew`: at least one name. */
export function answerDemoChecks(
  checks: readonly DueCheck[],
  untilMs: number,
  crew: readonly [string, ...string[]],
): DemoCheckAnswer[] {
  return checks
    .filter((check) => check.dueMs + ANSWERED_AFTER_MS <= untilMs)
    .map((check, index) => ({
      id: check.id,
      checkId: check.checkId,
      dueMs: check.dueMs,
      answer: 'yes',
      answeredMs: check.dueMs + ANSWERED_AFTER_MS,
      note: '',
      person: crew[index % crew.length] ?? crew[0],
    }));
}
