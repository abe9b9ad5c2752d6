// How long a notice is news, and how long it is worth telling at all.
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../shared/units.ts';

/** Older than this, a notice is history: it is told with others of its kind in one message, for alone it would only startle. */
export const NEWS_MS = 6 * HOUR_MS;

/** Older than this it is told no more: the record and the list of alarms say it. */
export const GIVE_UP_AFTER_MS = 7 * DAY_MS;

const LATE_AFTER_MS = 15 * MINUTE_MS;

/** True when more than 15 minutes lie between deciding and telling: the message must say so. */
export function isToldLate(decidedMs: number, nowMs: number): boolean {
  return nowMs - decidedMs > LATE_AFTER_MS;
}

/** True when more than 6 hours lie between deciding and telling. */
export function isHistory(decidedMs: number, nowMs: number): boolean {
  return nowMs - decidedMs > NEWS_MS;
}

/** True when more than 7 days lie between deciding and telling. */
export function isForgotten(decidedMs: number, nowMs: number): boolean {
  return nowMs - decidedMs > GIVE_UP_AFTER_MS;
}
