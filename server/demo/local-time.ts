// Local time of day at the invented nursery, cheap enough to ask for at every step. Reads no clock: the instant comes in.
import { Temporal } from 'temporal-polyfill';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../shared/units.ts';

interface LocalInstant {
  /** Whole days since 1970-01-01 by the local calendar. */
  readonly day: number;
  /** Wall-clock hours since local midnight, 0 up to but not including 24. */
  readonly hour: number;
}

/** Reads local time in an IANA zone. Zones change their offset on a quarter of an hour, so one look-up serves each quarter. */
export function createLocalClock(zone: string): (timeMs: number) => LocalInstant {
  let quarter = Number.NaN;
  let offsetMs = 0;
  return (timeMs) => {
    const wanted = Math.floor(timeMs / (15 * MINUTE_MS));
    if (wanted !== quarter) {
      quarter = wanted;
      offsetMs = zonedTime(wanted * 15 * MINUTE_MS, zone).offsetNanoseconds / 1e6;
    }
    const localMs = timeMs + offsetMs;
    const day = Math.floor(localMs / DAY_MS);
    return { day, hour: (localMs - day * DAY_MS) / HOUR_MS };
  };
}

/** When local clocks showed `timeOfDay` (`HH:MM`) `daysBack` calendar days before the local day of `beforeMs`. */
export function timeOfDayBack(beforeMs: number, daysBack: number, timeOfDay: string, zone: string): number {
  return zonedTime(beforeMs, zone).subtract({ days: daysBack }).withPlainTime(timeOfDay).epochMilliseconds;
}

function zonedTime(timeMs: number, zone: string): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(timeMs).toZonedDateTimeISO(zone);
}
