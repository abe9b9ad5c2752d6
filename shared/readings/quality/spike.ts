// Spike test: does one sample stand out from the two beside it? It can judge a sample only when the next one has come.
import { FLAG, type Flag } from '../reading.ts';
import type { SpikeLimits } from './quality-limits.ts';
import type { Sample } from './sample.ts';

/** The last two samples, older first. */
export interface SpikeMemory {
  readonly recent: readonly Sample[];
}

export const emptySpikeMemory: SpikeMemory = { recent: [] };

export interface SpikeTested {
  readonly memory: SpikeMemory;
  /** Flag of the sample *before* the one given; null = there was none. */
  readonly flag: Flag | null;
}

/**
 * Takes sample n and judges sample n−1 (QARTOD test 6): deviation > `fail` → fail, > `suspect` → suspect; not evaluated when a neighbour is
 * missing or further away than `longestGapMs`.
 *
 * `average` is the manual's own: |x(n−1) − (x(n−2) + x(n))/2|. It also flags the good samples on both sides of a spike and the corners of a
 * genuine jump. `differential` (as in ioos_qc) takes the smaller of the two steps, and only where the line turns back: a tent that truly
 * heats up at once keeps its readings.
 */
export function spike(memory: SpikeMemory, sample: Sample, limits: SpikeLimits): SpikeTested {
  const judged = memory.recent.at(-1);
  const older = memory.recent.at(-2);
  const recent = judged === undefined ? [sample] : [judged, sample];
  return {
    memory: { recent },
    flag: judged === undefined ? null : judgeMiddle(older, judged, sample, limits),
  };
}

function judgeMiddle(older: Sample | undefined, middle: Sample, newer: Sample, limits: SpikeLimits): Flag {
  if (middle.value === null) return FLAG.missing;
  const before = valueNear(older, middle.timeMs, limits);
  const after = valueNear(newer, middle.timeMs, limits);
  if (before === null || after === null) return FLAG.notEvaluated;
  const deviation = deviationOf[limits.method](before, middle.value, after);
  if (deviation > limits.fail) return FLAG.fail;
  return deviation > limits.suspect ? FLAG.suspect : FLAG.pass;
}

function valueNear(neighbour: Sample | undefined, timeMs: number, limits: SpikeLimits): number | null {
  if (neighbour === undefined || Math.abs(timeMs - neighbour.timeMs) > limits.longestGapMs) return null;
  return neighbour.value;
}

const deviationOf = {
  average: (before: number, value: number, after: number) => Math.abs(value - (before + after) / 2),
  differential: (before: number, value: number, after: number) => {
    const rise = value - before;
    const fall = value - after;
    return rise * fall > 0 ? Math.min(Math.abs(rise), Math.abs(fall)) : 0;
  },
};
