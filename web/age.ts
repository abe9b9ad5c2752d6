// How old something is, in words. Pure: the instant "now" comes in.
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS } from '../shared/units.ts';
import { words } from './strings.ts';

/** A span in the largest fitting words: "6 s", "4 min", "2 h 5 min", "3 days". Negative spans count as zero. */
export function spanWords(spanMs: number): string {
  const span = Math.max(0, spanMs);
  if (span < MINUTE_MS) return words.age.seconds(Math.floor(span / SECOND_MS));
  if (span < HOUR_MS) return words.age.minutes(Math.floor(span / MINUTE_MS));
  if (span < 2 * DAY_MS) {
    const hours = Math.floor(span / HOUR_MS);
    return words.age.hours(hours, Math.floor((span - hours * HOUR_MS) / MINUTE_MS));
  }
  return words.age.days(Math.floor(span / DAY_MS));
}

/** "just now" below five seconds, else "4 min ago". */
export function agoWords(spanMs: number): string {
  return spanMs < 5 * SECOND_MS ? words.age.justNow : words.age.ago(spanWords(spanMs));
}

/** The service gives a pulse every twenty seconds: while one of them can still be on its way there is nothing to think about. */
const FRESH_MS = 30 * SECOND_MS;

/** How old what a page shows is, by when the service was last heard: "up to date", else "as of 35 s ago". */
export function freshWords(heardAgoMs: number): string {
  return heardAgoMs < FRESH_MS ? words.live.fresh : words.live.heard(agoWords(heardAgoMs));
}

/** True when a value is older than its probe's allowed silence, or has no time at all: it must not look fresh. */
export function isOld(at: string | null, nowMs: number, silenceMs: number): boolean {
  return at === null || nowMs - Date.parse(at) > silenceMs;
}
