// The time of a reading as a payload spells it. It never guesses a zone or a scale.
import { asNumber, asText, describeValue } from './json-object.ts';
import { parseRfc3339 } from './parse-rfc3339.ts';

export const timeUnits = ['rfc3339', 's', 'ms'] as const;
/** RFC 3339 text, seconds since 1970, or milliseconds since 1970. */
type TimeUnit = (typeof timeUnits)[number];

/** Milliseconds since the epoch, rounded; or, as text, the reason why the value is not a time. */
export function readTimeMs(value: unknown, unit: TimeUnit): number | string {
  if (unit === 'rfc3339') return readTextTime(value);
  const number = asNumber(value);
  if (number !== null) return Math.round(unit === 's' ? number * 1000 : number);
  const word = unit === 's' ? 'seconds' : 'milliseconds';
  return `The time is ${describeValue(value)}; send it as a number of ${word} since 1970.`;
}

function readTextTime(value: unknown): number | string {
  const text = asText(value);
  const timeMs = text === null ? null : parseRfc3339(text);
  if (timeMs !== null) return timeMs;
  return `The time is ${describeValue(value)}; write it as RFC 3339 with its zone, for example 2026-03-02T07:00:00Z, or as seconds since 1970.`;
}
