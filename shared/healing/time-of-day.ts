// Times of day at a site: the instant of "07:00" on whatever day, across shifts of daylight saving time.
// Healing time is elapsed time; a time of day only says at which hour people are there to act.
import { Temporal } from 'temporal-polyfill';

/** True for a name of the IANA time zone database (`Europe/Amsterdam`, `UTC`); a bare offset such as `+02:00` knows no shifts and is refused. */
export function validZone(zone: string): boolean {
  if (!/^[A-Za-z]/.test(zone)) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

/** From the first instant up to, not including, the second. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * The stretch of a day between two times of day; an end that is not after its beginning lies on the next day. It is one piece, even where the
 * clock repeats an hour: it begins when the clock first shows `from` and ends when it first shows `to`. Where the zone left the next day out
 * altogether, the day after that is the next: a night goes on into it. Null where nothing is left of it: both lie in an hour that the clock skips,
 * or it would begin on a day that the zone left out.
 */
export function stretchOn(
  date: Temporal.PlainDate,
  { from, to }: { readonly from: string; readonly to: string },
  zone: string,
): Stretch | null {
  const begins = Temporal.PlainTime.from(from);
  const ends = Temporal.PlainTime.from(to);
  const isWithinDay = Temporal.PlainTime.compare(ends, begins) > 0;
  const fromMs = timeOfDayOn(date, begins, zone);
  const toMs = timeOfDayOn(isWithinDay ? date : dayAfter(date, zone), ends, zone);
  return fromMs === null || toMs === null || toMs <= fromMs ? null : { fromMs, toMs };
}

/** The next day that there is in the zone: no zone has ever left out two in a row. */
function dayAfter(date: Temporal.PlainDate, zone: string): Temporal.PlainDate {
  const next = date.add({ days: 1 });
  return isDay(next, zone) ? next : next.add({ days: 1 });
}

/**
 * The first instant (ms) at or after `ms` at which the site's clock shows `timeOfDay` (`HH:MM`).
 * A time that a shift leaves out on a day is the first instant after the gap; one that a shift repeats is its first occurrence;
 * a day that a zone left out altogether has no times. Throws a RangeError for an unknown zone or a malformed time of day.
 */
export function firstTimeOfDayAtOrAfter(ms: number, timeOfDay: string, zone: string): number {
  const time = Temporal.PlainTime.from(timeOfDay);
  const wholeMs = Math.ceil(ms);
  // From the day before: a gap over midnight lets its last times of day arrive on the next day.
  let date = Temporal.Instant.fromEpochMilliseconds(wholeMs)
    .toZonedDateTimeISO(zone)
    .toPlainDate()
    .subtract({ days: 1 });
  for (;;) {
    const foundMs = timeOfDayOn(date, time, zone);
    if (foundMs !== null && foundMs >= wholeMs) return foundMs;
    date = date.add({ days: 1 });
  }
}

/** The instant (ms) of a time of day on one date; null on a day that the zone left out. What a shift leaves out or repeats is as above. */
export function timeOfDayOn(date: Temporal.PlainDate, time: Temporal.PlainTime, zone: string): number | null {
  const wanted = date.toPlainDateTime(time);
  const found = wanted.toZonedDateTime(zone, { disambiguation: 'earlier' });
  if (found.toPlainDateTime().equals(wanted)) return found.epochMilliseconds;
  // In a gap "earlier" lies just before the shift, so that the next shift is the end of the gap.
  return isDay(date, zone) ? (found.getTimeZoneTransition('next') ?? found).epochMilliseconds : null;
}

/** False for a day that the zone left out, as a place does that moves across the date line. */
function isDay(date: Temporal.PlainDate, zone: string): boolean {
  return date.toZonedDateTime(zone).toPlainDate().equals(date);
}
