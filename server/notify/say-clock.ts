// A moment as the site's clock shows it and a stretch of time, short enough for a phone.
import { Temporal } from 'temporal-polyfill';
import { MINUTE_MS } from '../../shared/units.ts';

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** "14:02" on the same day as `nowMs` in the site's zone, else with the day: "Sun 2026-03-01 14:02". */
export function sayClock(ms: number, nowMs: number, zone: string): string {
  const at = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
  const now = Temporal.Instant.fromEpochMilliseconds(nowMs).toZonedDateTimeISO(zone);
  const clock = `${pad(at.hour)}:${pad(at.minute)}`;
  if (at.toPlainDate().equals(now.toPlainDate())) return clock;
  return `${weekdays[at.dayOfWeek - 1]} ${at.toPlainDate().toString()} ${clock}`;
}

/** "25 min", from two hours on "2 h 5 min". */
export function sayDuration(ms: number): string {
  const minutes = Math.round(ms / MINUTE_MS);
  return minutes < 120 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

function pad(value: number): string {
  return String(value).padStart(2, '0');
}
