// The test vectors of the ioos_qc test-suite (tests/test_qartod.py, Apache-2.0), the reference program of the IOOS QARTOD manuals.
import { describe, expect, it } from 'vitest';
import { aggregateFlags } from '../../shared/readings/quality/aggregate-flags.ts';
import { emptyFlatLineMemory, flatLine } from '../../shared/readings/quality/flat-line.ts';
import { grossRange } from '../../shared/readings/quality/gross-range.ts';
import { emptyRateMemory, rateOfChange } from '../../shared/readings/quality/rate-of-change.ts';
import type { Sample, Tested } from '../../shared/readings/quality/sample.ts';
import { emptySpikeMemory, spike } from '../../shared/readings/quality/spike.ts';
import { FLAG, type Flag } from '../../shared/readings/reading.ts';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';

type Values = readonly (number | null)[];

const STEP_MS = 15 * MINUTE_MS;

function samplesOf(values: Values): Sample[] {
  return values.map((value, i) => ({ timeMs: i * STEP_MS, value }));
}

function run<Memory>(values: Values, empty: Memory, test: (memory: Memory, sample: Sample) => Tested<Memory>): Flag[] {
  let memory = empty;
  return samplesOf(values).map((sample) => {
    const tested = test(memory, sample);
    memory = tested.memory;
    return tested.flag;
  });
}

/** The flag of each sample comes with the next one; the last is never judged: missing or not evaluated. */
function runSpike(values: Values, method: 'average' | 'differential', suspect: number, fail: number): Flag[] {
  const limits = { method, suspect, fail, longestGapMs: STEP_MS };
  const flags: Flag[] = [];
  let memory = emptySpikeMemory;
  for (const sample of samplesOf(values)) {
    const tested = spike(memory, sample, limits);
    memory = tested.memory;
    if (tested.flag !== null) flags.push(tested.flag);
  }
  return [...flags, values.at(-1) === null ? FLAG.missing : FLAG.notEvaluated];
}

describe('gross range, as in ioos_qc', () => {
  it('fails outside the sensor span and suspects outside the user span, both ends inclusive', () => {
    const limits = { sensorLow: 10, userLow: 20, userHigh: 40, sensorHigh: 50 };
    const flags = [5, 10, 15, 20, 25, 30, 35, 40, 45, 51].map((value) => grossRange(value, limits));
    expect(flags).toEqual([4, 3, 3, 1, 1, 1, 1, 1, 3, 4]);
  });
});

describe('spike, as in ioos_qc', () => {
  it.each([
    ['a spike, with its neighbours', [10, 12, 999.99, 13, 15, 40, 9, 9], [2, 4, 4, 4, 1, 3, 1, 2]],
    ['the same below zero', [-10, -12, -999.99, -13, -15, -40, -9, -9], [2, 4, 4, 4, 1, 3, 1, 2]],
    ['first and last are not evaluated', [-100, -99, -99, -98], [2, 1, 1, 2]],
    [
      'beside a missing sample nothing is evaluated',
      [10, 12, 999.99, 13, 15, 40, 9, 9, null, 10, 10, 999.99, 10, null],
      [2, 4, 4, 4, 1, 3, 1, 2, 9, 2, 4, 4, 2, 9],
    ],
  ])('average, 25 and 50: %s', (_why, values, expected) => {
    expect(runSpike(values, 'average', 25, 50)).toEqual(expected);
  });

  it('average, 0.5 and 1: finds the one zero in a measured tide', () => {
    const tide = [
      -0.189, -0.0792, -0.0122, 0.0457, 0.0671, 0.0213, -0.0488, -0.1463, -0.2438, -0.3261, -0.3871, -0.4054, -0.3932,
      -0.3383, -0.2804, -0.2347, -0.2134, -0.2347, -0.2926, -0.3597, -0.442, -0.509, 0, -0.5944, -0.57, -0.4267,
      -0.2926, -0.1585, -0.0945, -0.0762,
    ];
    const expected = tide.map((_, i) => (i === 0 || i === tide.length - 1 ? 2 : i === 22 ? 3 : 1));
    expect(runSpike(tide, 'average', 0.5, 1)).toEqual(expected);
  });

  // The suite's newer rule for samples beside a missing one (not evaluated instead of missing) is used for both methods.
  const mixed = [3, 4.99, 5, 6, 8, 6, 6, 6.75, 6, 6, 5.3, 6, 6, 9, 5, null, 4, 4];
  it.each([
    ['average', [2, 3, 1, 1, 4, 3, 1, 3, 1, 1, 3, 1, 4, 4, 2, 9, 2, 2]],
    ['differential', [2, 1, 1, 1, 4, 1, 1, 3, 1, 1, 3, 1, 1, 4, 2, 9, 2, 2]],
  ] as const)('%s, 0.5 and 1, on the same series', (method, expected) => {
    expect(runSpike(mixed, method, 0.5, 1)).toEqual(expected);
  });
});

describe('rate of change, as in ioos_qc', () => {
  const limits = { perMinute: 5 / 15, shortestMs: MINUTE_MS };
  it.each([
    [
      'jumps both ways',
      [2, 10, 2.1, 3, 4, 5, 7, 10, 0, 2, 2.2, 2, 1, 2, 3, 90, 91, 92, 93, 1, 2, 3, 4, 5],
      [1, 3, 3, 1, 1, 1, 1, 1, 3, 1, 1, 1, 1, 1, 1, 3, 1, 1, 1, 3, 1, 1, 1, 1],
    ],
    ['missing samples', [2, 10, 2, 3, null, null, 7, 10], [1, 3, 3, 1, 9, 9, 1, 1]],
    ['below zero', [-2, -10, -2, -3], [1, 3, 3, 1]],
  ])('5 in 15 min: %s', (_why, values, expected) => {
    const flags = run(values, emptyRateMemory, (memory, sample) => rateOfChange(memory, sample, limits));
    expect(flags).toEqual(expected);
  });
});

describe('flat line, as in ioos_qc', () => {
  const arr = [1, 2, 2.0001, 2, 2.0001, 2, 2.0001, 2, 4, 5, 3, 3.0001, 3.0005, 3.00001];
  const limits = {
    tolerance: 0.01,
    suspectMs: 3000 * SECOND_MS,
    failMs: 4800 * SECOND_MS,
    longestGapMs: STEP_MS,
    parkedAt: null,
  };
  it.each([
    ['as it stands', arr],
    ['below zero', arr.map((value) => -value)],
  ])('3000 s and 4800 s, tolerance 0.01: %s', (_why, values) => {
    const flags = run(values, emptyFlatLineMemory, (memory, sample) => flatLine(memory, sample, limits));
    expect(flags).toEqual([1, 1, 1, 1, 3, 3, 4, 4, 1, 1, 1, 1, 1, 3]);
  });
});

describe('aggregate, as in ioos_qc', () => {
  it('lets the gravest of three tests win at each sample', () => {
    const first: Flag[] = [1, 1, 1, 9, 1, 1, 9, 9];
    const second: Flag[] = [2, 1, 1, 1, 1, 1, 9, 9];
    const third: Flag[] = [1, 3, 3, 4, 3, 1, 2, 9];
    const flags = first.map((flag, i) => aggregateFlags([flag, second[i] ?? 9, third[i] ?? 9]));
    expect(flags).toEqual([1, 3, 3, 4, 3, 1, 2, 9]);
  });
});
