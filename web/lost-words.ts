// How old what is shown is, after the connection was lost. Pure.
import { MINUTE_MS } from '../shared/units.ts';
import { spanWords } from './age.ts';
import { words } from './strings.ts';
import { dayAndTime } from './when.ts';

/** Counted in minutes: seconds would be read out anew all the time, and the head of the page counts them. */
export function lostWords(heardMs: number, nowMs: number, zone: string): string {
  const ageMs = nowMs - heardMs;
  const age = ageMs < MINUTE_MS ? words.live.underAMinute : spanWords(ageMs);
  return words.live.lost(dayAndTime(heardMs, nowMs, zone), age);
}
