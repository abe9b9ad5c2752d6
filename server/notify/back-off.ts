// When to try again: 5 s, 10 s, 20 s … at most 5 min, each up to a quarter shorter by chance so that what failed together does not come back together.
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';

const FIRST_MS = 5 * SECOND_MS;
const LONGEST_MS = 5 * MINUTE_MS;
const SPREAD = 0.25;

/** Pause in ms after `triesBefore` (0, 1, 2 …) tries and one more that failed. `chance` is from 0 up to, not including, 1. */
export function backOffMs(triesBefore: number, chance: number): number {
  const full = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(triesBefore, 10));
  return Math.round(full * (1 - SPREAD * chance));
}
