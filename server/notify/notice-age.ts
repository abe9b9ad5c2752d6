// How long a notice is news.
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';

/** Older than this, a notice is history: what it tells has been seen or is over, and telling it now would only startle. */
export const GIVE_UP_AFTER_MS = 6 * HOUR_MS;

const LATE_AFTER_MS = 15 * MINUTE_MS;

/** True when more than 15 minutes lie between deciding and telling: the message must say so. */
export function isToldLate(decidedMs: number, nowMs: number): boolean {
  return nowMs - decidedMs > LATE_AFTER_MS;
}

/** True when more than 6 hours lie between deciding and telling: it is not told any more. */
export function isHistory(decidedMs: number, nowMs: number): boolean {
  return nowMs - decidedMs > GIVE_UP_AFTER_MS;
}
