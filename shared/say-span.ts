// A stretch of time in words, short enough for a phone.
import type { Saying } from './saying.ts';
import { MINUTE_MS } from './units.ts';

/** "less than a minute", "25 min", from two hours on "2 h 5 min". Negative counts as nothing. */
export function saySpan(ms: number, { words: { spans } }: Saying): string {
  const minutes = Math.max(0, Math.round(ms / MINUTE_MS));
  if (minutes < 1) return spans.underAMinute;
  return minutes < 120 ? spans.minutes(minutes) : spans.hours(Math.floor(minutes / 60), minutes % 60);
}
