// The hours in which a person does not want to be told what can wait, on the clock of the site.
import { Temporal } from 'temporal-polyfill';

/** `HH:MM` both, or null both: no quiet hours. An end that is not after its beginning lies on the next day; equal ones are the whole day. */
export interface QuietHours {
  readonly quietFrom: string | null;
  readonly quietTo: string | null;
}

/** True from the beginning of the quiet hours up to, not including, their end. `zone` is an IANA zone. */
export function isQuiet({ quietFrom, quietTo }: QuietHours, zone: string, nowMs: number): boolean {
  if (quietFrom === null || quietTo === null) return false;
  const clock = Temporal.Instant.fromEpochMilliseconds(Math.floor(nowMs)).toZonedDateTimeISO(zone).toPlainTime();
  const isFrom = Temporal.PlainTime.compare(clock, quietFrom) >= 0;
  const isBeforeEnd = Temporal.PlainTime.compare(clock, quietTo) < 0;
  // "22:00 to 06:00" goes through midnight; texts of this form sort as their times.
  return quietFrom < quietTo ? isFrom && isBeforeEnd : isFrom || isBeforeEnd;
}
