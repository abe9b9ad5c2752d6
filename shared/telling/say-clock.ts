// A moment as the site's clock shows it, short enough for a phone.
import { Temporal } from 'temporal-polyfill';
import type { SharedWords } from '../words/shared-words.ts';

/** "14:02" on the same day as `nowMs` in the site's zone, else with the day: "Sun 2026-03-01 14:02". */
export function sayClock(ms: number, nowMs: number, zone: string, { notices }: SharedWords): string {
  const at = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
  const now = Temporal.Instant.fromEpochMilliseconds(nowMs).toZonedDateTimeISO(zone);
  const clock = `${pad(at.hour)}:${pad(at.minute)}`;
  if (at.toPlainDate().equals(now.toPlainDate())) return clock;
  return `${notices.weekdays[at.dayOfWeek - 1]} ${at.toPlainDate().toString()} ${clock}`;
}

/** "14:02:11" in the site's zone: for what has happened just now. */
export function saySecond(ms: number, zone: string): string {
  const at = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
  return [at.hour, at.minute, at.second].map(pad).join(':');
}

function pad(value: number): string {
  return String(value).padStart(2, '0');
}
