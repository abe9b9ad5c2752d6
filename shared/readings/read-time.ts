// The time of a reading as a payload spells it. It never guesses a zone or a scale.
import { asNumber, asText, describeValue } from './json-object.ts';
import { parseRfc3339 } from './parse-rfc3339.ts';
import { because, type Reason } from './reason.ts';

export const timeUnits = ['rfc3339', 's', 'ms'] as const;
/** RFC 3339 text, seconds since 1970, or milliseconds since 1970. */
type TimeUnit = (typeof timeUnits)[number];

/** Milliseconds since the epoch, rounded; or the reason why the value is not a time. */
export function readTimeMs(value: unknown, unit: TimeUnit): number | Reason {
  if (unit === 'rfc3339') return readTextTime(value);
  const number = asNumber(value);
  if (number !== null) return Math.round(unit === 's' ? number * 1000 : number);
  return because(unit === 's' ? 'timeNoSeconds' : 'timeNoMilliseconds', describeValue(value));
}

function readTextTime(value: unknown): number | Reason {
  const text = asText(value);
  const timeMs = text === null ? null : parseRfc3339(text);
  return timeMs ?? because('timeNoText', describeValue(value));
}
