// Reads a time written as RFC 3339. Stricter than `Date.parse`, which guesses a zone and accepts 30 February.
import { DAY_MS, MINUTE_MS } from '../units.ts';

const timePattern = /^(\d{4})-(\d\d)-(\d\d)[Tt ](\d\d):(\d\d):(\d\d)(\.\d+)?(?:[Zz]|([+-])(\d\d):(\d\d))$/;

/**
 * Milliseconds since the epoch of an RFC 3339 date-time, rounded to the millisecond; `null` for any other text.
 * A zone (`Z` or an offset) is required. A leap second (`:60`) is taken as the first instant of the next minute,
 * and only where one can be: at the end of a UTC day.
 */
export function parseRfc3339(text: string): number | null {
  const match = timePattern.exec(text);
  if (match === null) return null;
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map(Number) as SixNumbers;
  const offsetMs = readOffsetMs(match[8], match[9], match[10]);
  if (offsetMs === null || hour > 23 || minute > 59 || second > 60 || !isDate(year, month, day)) return null;
  const wholeMs = Date.UTC(year, month - 1, day, hour, minute, second) - offsetMs;
  if (second === 60 && wholeMs % DAY_MS !== 0) return null;
  return wholeMs + Math.round(Number(match[7] ?? 0) * 1000);
}

type SixNumbers = [number, number, number, number, number, number];

/** A rolled-over date (30 February) and a year that JavaScript moves into the 1900s (0–99) both come back changed. */
function isDate(year: number, month: number, day: number): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

function readOffsetMs(sign: string | undefined, hours: string | undefined, minutes: string | undefined): number | null {
  if (sign === undefined) return 0;
  const [h, m] = [Number(hours), Number(minutes)];
  if (h > 23 || m > 59) return null;
  return (sign === '-' ? -1 : 1) * (h * 60 + m) * MINUTE_MS;
}
