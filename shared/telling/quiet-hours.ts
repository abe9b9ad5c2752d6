// The hours in which a person does not want to be told what can wait, on the clock of the site.
import { Temporal } from 'temporal-polyfill';
import { stretchOn } from '../healing/time-of-day.ts';

/** `HH:MM` both, or null both: no quiet hours. An end that is not after its beginning lies on the next day; equal ones are the whole day. */
export interface QuietHours {
  readonly quietFrom: string | null;
  readonly quietTo: string | null;
}

/**
 * True from the beginning of the quiet hours up to, not including, their end. `zone` is an IANA zone. Each day's are one stretch on real time, as a
 * duty is: where the clock repeats an hour, "until 02:30" is over when it first shows 02:30, and does not begin again in the second pass.
 */
export function isQuiet({ quietFrom, quietTo }: QuietHours, zone: string, nowMs: number): boolean {
  if (quietFrom === null || quietTo === null) return false;
  if (quietFrom === quietTo) return true;
  const today = Temporal.Instant.fromEpochMilliseconds(Math.floor(nowMs)).toZonedDateTimeISO(zone).toPlainDate();
  // The stretch of the evening before may go on into this day, and a zone may have left out the day between.
  return [0, 1, 2].some((days) => {
    const date = today.subtract({ days });
    const stretch = stretchOn(date, { from: quietFrom, to: quietTo }, zone);
    return stretch !== null && stretch.fromMs <= nowMs && nowMs < stretch.toMs;
  });
}
