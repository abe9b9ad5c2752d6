// How many readings have which quality flag: nothing bad is hidden in a record, it is counted.
import type { QualityCounts } from '../../shared/api/record.ts';
import { FLAG, type Flag } from '../../shared/readings/reading.ts';

const nameOfFlag: Record<Flag, keyof QualityCounts> = {
  [FLAG.pass]: 'pass',
  [FLAG.notEvaluated]: 'notEvaluated',
  [FLAG.suspect]: 'suspect',
  [FLAG.fail]: 'fail',
  [FLAG.missing]: 'missing',
};

export type RunningCounts = { -readonly [Name in keyof QualityCounts]: number };

export function noCounts(): RunningCounts {
  return { pass: 0, notEvaluated: 0, suspect: 0, fail: 0, missing: 0 };
}

export function countFlag(counts: RunningCounts, flag: Flag): void {
  counts[nameOfFlag[flag]] += 1;
}

/** The sum of several counts. */
export function sumCounts(parts: readonly QualityCounts[]): QualityCounts {
  const sum = noCounts();
  for (const part of parts) {
    for (const name of Object.values(nameOfFlag)) sum[name] += part[name];
  }
  return sum;
}
