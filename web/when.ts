// Instants in the site's time zone as a person at the site says them. The phone's own zone plays no part.
import { DAY_MS, MINUTE_MS } from '../shared/units.ts';
import { words } from './strings.ts';

type Style = 'time' | 'date' | 'weekday' | 'dayOfMonth' | 'dayKey' | 'parts';

const styles: Record<Style, Intl.DateTimeFormatOptions> = {
  time: { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' },
  date: { day: 'numeric', month: 'short' },
  weekday: { weekday: 'short' },
  dayOfMonth: { weekday: 'short', day: 'numeric' },
  dayKey: { year: 'numeric', month: '2-digit', day: '2-digit' },
  parts: {
    ...{ year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit' },
    hourCycle: 'h23',
  },
};

const formatters = new Map<string, Intl.DateTimeFormat>();

function formatter(style: Style, zone: string): Intl.DateTimeFormat {
  const key = `${style} ${zone}`;
  const known = formatters.get(key);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat(words.locale, { ...styles[style], timeZone: zone });
  formatters.set(key, made);
  return made;
}

/** True for a time zone this browser knows. */
export function isZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat(words.locale, { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch (problem) {
    if (problem instanceof RangeError) return false;
    throw problem;
  }
}

/** Every zone there is to choose, by name. */
export function zoneNames(): readonly string[] {
  return [...new Set([...Intl.supportedValuesOf('timeZone'), 'UTC'])];
}

/** "14:05". */
export function clockTime(ms: number, zone: string): string {
  return formatter('time', zone).format(ms);
}

/** "14:05" today, "tomorrow 09:00", "yesterday 22:10", "Sat 09:00" within six days, else "3 Mar 09:00". */
export function dayAndTime(ms: number, nowMs: number, zone: string): string {
  const dayKey = formatter('dayKey', zone);
  const time = clockTime(ms, zone);
  const day = dayKey.format(ms);
  if (day === dayKey.format(nowMs)) return time;
  if (day === dayKey.format(nowMs + DAY_MS)) return words.when.tomorrow(time);
  if (day === dayKey.format(nowMs - DAY_MS)) return words.when.yesterday(time);
  const isNear = Math.abs(ms - nowMs) < 6 * DAY_MS;
  return words.when.on(formatter(isNear ? 'weekday' : 'date', zone).format(ms), time);
}

/** "Thu 14:05", for the head of the page. */
export function weekdayAndTime(ms: number, zone: string): string {
  return words.when.on(formatter('weekday', zone).format(ms), clockTime(ms, zone));
}

/** "Tue 3", for the axis of a chart. */
export function dayOfMonth(ms: number, zone: string): string {
  return formatter('dayOfMonth', zone).format(ms);
}

/** "3 Mar", or "–" for nothing. */
export function shortDate(at: string | null, zone: string): string {
  return at === null ? words.units.none : formatter('date', zone).format(Date.parse(at));
}

/** What must be added to UTC at this instant to get local wall time, ms. */
export function zoneOffsetMs(ms: number, zone: string): number {
  const parts = new Map(
    formatter('parts', zone)
      .formatToParts(ms)
      .map((part) => [part.type, Number(part.value)]),
  );
  const value = (type: Intl.DateTimeFormatPartTypes) => parts.get(type) ?? 0;
  const wall = Date.UTC(
    value('year'),
    value('month') - 1,
    value('day'),
    value('hour'),
    value('minute'),
    value('second'),
  );
  return wall - Math.floor(ms / 1000) * 1000;
}

/** The instant of a local wall time "YYYY-MM-DDTHH:mm" at the site; null when it cannot be read. A time that DST skips moves on. */
export function instantOfWallTime(wall: string, zone: string): number | null {
  const asUtc = Date.parse(`${wall}Z`);
  if (Number.isNaN(asUtc)) return null;
  const guess = asUtc - zoneOffsetMs(asUtc, zone);
  return asUtc - zoneOffsetMs(guess, zone);
}

/** Local wall time "YYYY-MM-DDTHH:mm" of an instant, for a date field. */
export function wallTime(ms: number, zone: string): string {
  const local = ms + zoneOffsetMs(ms, zone);
  return new Date(local - (local % MINUTE_MS)).toISOString().slice(0, 16);
}
