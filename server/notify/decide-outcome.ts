// What follows from one try: pure, so that every case can be read in a table. It never sends and never writes.
import { sayFinding } from '../../shared/finding.ts';
import { plainEnglish } from '../../shared/plain-english.ts';
import { backOffMs } from './back-off.ts';
import type { SendResult } from './channels/channel.ts';
import { GIVE_UP_AFTER_MS } from './notice-age.ts';

/** `result` is for the log and for whoever looks into the outbox: in English. No page shows it. */
export type Outcome =
  | { readonly type: 'sent'; readonly result: string }
  | { readonly type: 'retry'; readonly result: string; readonly nextTryMs: number }
  | { readonly type: 'given-up'; readonly result: string };

interface Tried {
  readonly attempts: number;
  readonly decidedMs: number;
}

/** `attempts` are the tries before this one; `chance` spreads the pauses, 0 ≤ chance < 1. */
export function decideOutcome(result: SendResult, notice: Tried, nowMs: number, chance: number): Outcome {
  if (result.delivered) return { type: 'sent', result: sayFinding(result.detail, plainEnglish.words) };
  const reason = sayFinding(result.reason, plainEnglish.words);
  if (!result.retryable) return { type: 'given-up', result: reason };
  const pauseMs = Math.max(backOffMs(notice.attempts, chance), result.retryAfterMs ?? 0);
  return retryUnlessForgotten(notice, nowMs + pauseMs, reason);
}

/** Another try at `nextTryMs`, or none when it would be older by then than anything that is told. */
export function retryUnlessForgotten(notice: Tried, nextTryMs: number, reason: string): Outcome {
  if (nextTryMs - notice.decidedMs <= GIVE_UP_AFTER_MS) return { type: 'retry', result: reason, nextTryMs };
  return { type: 'given-up', result: `${reason}; tried for 7 days, no more tries` };
}
