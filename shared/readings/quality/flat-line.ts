// Flat line test: has the value stood still for longer than air does? Based on time, not on a count of samples, so that it does not
// depend on how often a node sends.
import { FLAG, type Flag } from '../reading.ts';
import type { FlatLineLimits } from './quality-limits.ts';
import type { Measured, Sample, Tested } from './sample.ts';

/** The run of samples that stay together: its extremes, and since when no other value has been seen. */
export interface FlatRun {
  readonly sinceMs: number;
  readonly lastMs: number;
  readonly lowest: number;
  readonly highest: number;
}

export interface FlatLineMemory {
  readonly run: FlatRun | null;
}

export const emptyFlatLineMemory: FlatLineMemory = { run: null };

/**
 * Values that differ by less than `tolerance` for `suspectMs` → suspect, `failMs` → fail (QARTOD test 8), counted from the last sample that
 * was different. At `parkedAt` and above the test says nothing (not evaluated). Memory is one run: a line that drifts by more than the
 * tolerance starts a new one, so a flat stretch after a drift may be found up to its own first reading later than a sliding window would.
 */
export function flatLine(memory: FlatLineMemory, sample: Sample, limits: FlatLineLimits): Tested<FlatLineMemory> {
  const { timeMs, value } = sample;
  if (value === null) return { memory, flag: FLAG.missing };
  if (limits.parkedAt !== null && value >= limits.parkedAt) {
    return { memory: emptyFlatLineMemory, flag: FLAG.notEvaluated };
  }
  const run = extendRun(memory.run, { timeMs, value }, limits);
  return { memory: { run }, flag: flagOf(timeMs - run.sinceMs, limits) };
}

function extendRun(run: FlatRun | null, { timeMs, value }: Measured, limits: FlatLineLimits): FlatRun {
  if (run === null || timeMs - run.lastMs > limits.longestGapMs) {
    return { sinceMs: timeMs, lastMs: timeMs, lowest: value, highest: value };
  }
  const lowest = Math.min(run.lowest, value);
  const highest = Math.max(run.highest, value);
  if (highest - lowest < limits.tolerance) return { sinceMs: run.sinceMs, lastMs: timeMs, lowest, highest };
  return { sinceMs: run.lastMs, lastMs: timeMs, lowest: value, highest: value };
}

function flagOf(flatMs: number, limits: FlatLineLimits): Flag {
  if (flatMs >= limits.failMs) return FLAG.fail;
  return flatMs >= limits.suspectMs ? FLAG.suspect : FLAG.pass;
}
