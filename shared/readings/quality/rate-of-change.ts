// Rate of change test: did the value move faster than air can? Only the sample after the jump is flagged: a new level that stays is believed.

import { MINUTE_MS } from '../../units.ts';
import { FLAG } from '../reading.ts';
import type { RateLimits } from './quality-limits.ts';
import type { Measured, Sample, Tested } from './sample.ts';

/** The last sample that had a value; null = none yet. */
export interface RateMemory {
  readonly last: Measured | null;
}

export const emptyRateMemory: RateMemory = { last: null };

/**
 * |xn − x(n−1)| / elapsed above the limit → suspect, never fail (QARTOD test 7). Missing samples are passed over: the next value is compared
 * with the last one there was, over the time between. The first value passes, as in ioos_qc.
 */
export function rateOfChange(memory: RateMemory, sample: Sample, limits: RateLimits): Tested<RateMemory> {
  const { timeMs, value } = sample;
  if (value === null) return { memory, flag: FLAG.missing };
  const isTooFast = memory.last !== null && movedTooFast(memory.last, { timeMs, value }, limits);
  return { memory: { last: { timeMs, value } }, flag: isTooFast ? FLAG.suspect : FLAG.pass };
}

function movedTooFast(last: Measured, now: Measured, limits: RateLimits): boolean {
  const elapsedMs = Math.max(now.timeMs - last.timeMs, limits.shortestMs);
  return Math.abs(now.value - last.value) > (limits.perMinute * elapsedMs) / MINUTE_MS;
}
