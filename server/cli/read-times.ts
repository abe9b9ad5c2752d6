// Reads the times of a long series quickly.
import { parseRfc3339 } from '../../shared/readings/parse-rfc3339.ts';
import { SECOND_MS } from '../../shared/units.ts';

/** `parseRfc3339`, which takes a minute apart once: a series reads the same minute many times. */
export function createTimeReader(): (text: string) => number | null {
  let minute = '';
  let minuteMs: number | null = null;
  return (text) => {
    // Only the plain form, `2026-03-02T07:00:00Z`.
    if (!/:[0-5]\dZ$/.test(text) || text.length !== 20) return parseRfc3339(text);
    if (!text.startsWith(minute) || minute === '') {
      minute = text.slice(0, 17);
      minuteMs = parseRfc3339(`${minute}00Z`);
    }
    return minuteMs === null ? null : minuteMs + Number(text.slice(17, 19)) * SECOND_MS;
  };
}
