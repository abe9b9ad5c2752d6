// Reads the times of a long series quickly.
import { parseRfc3339 } from '../../shared/readings/parse-rfc3339.ts';
import { SECOND_MS } from '../../shared/units.ts';

/** Up to the seconds: `2026-03-02T07:00:`. */
const MINUTE_LENGTH = 17;

/** `parseRfc3339`, which takes a minute apart once: a series reads the same minute many times. */
export function createTimeReader(): (text: string) => number | null {
  let minute = 'no minute yet';
  let minuteMs: number | null = null;
  return (text) => {
    const seconds = plainSeconds(text);
    if (seconds === null) return parseRfc3339(text);
    if (!text.startsWith(minute)) {
      minute = text.slice(0, MINUTE_LENGTH);
      minuteMs = parseRfc3339(`${minute}00Z`);
    }
    return minuteMs === null ? null : minuteMs + seconds * SECOND_MS;
  };
}

/** The seconds of a time in the plain form, `2026-03-02T07:00:00Z`; null of any other, a leap second among them. */
function plainSeconds(text: string): number | null {
  if (text.length !== MINUTE_LENGTH + 3 || !text.endsWith('Z') || text[MINUTE_LENGTH - 1] !== ':') return null;
  const tens = text.charCodeAt(MINUTE_LENGTH) - ZERO;
  const ones = text.charCodeAt(MINUTE_LENGTH + 1) - ZERO;
  return tens >= 0 && tens <= 5 && ones >= 0 && ones <= 9 ? tens * 10 + ones : null;
}

const ZERO = '0'.charCodeAt(0);
