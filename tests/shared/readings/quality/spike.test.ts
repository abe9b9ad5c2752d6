import { describe, expect, it } from 'vitest';
import type { Sample } from '../../../../shared/readings/quality/sample.ts';
import { emptySpikeMemory, spike } from '../../../../shared/readings/quality/spike.ts';
import { MINUTE_MS } from '../../../../shared/units.ts';

const limits = { method: 'differential', suspect: 4, fail: 8, longestGapMs: 6 * MINUTE_MS } as const;

function flagOfMiddle(samples: readonly Sample[], method: 'average' | 'differential' = 'differential') {
  return samples.reduce((tested, sample) => spike(tested.memory, sample, { ...limits, method }), {
    memory: emptySpikeMemory,
    flag: null,
  } as ReturnType<typeof spike>).flag;
}

function everyMinute(...values: (number | null)[]): Sample[] {
  return values.map((value, i) => ({ timeMs: i * MINUTE_MS, value }));
}

describe('spike', () => {
  it.each([
    ['nothing before', [22], null],
    ['nothing on one side', [22, 30], 2],
    ['at the suspect limit', [22, 26, 22], 1],
    ['above the suspect limit', [22, 26.1, 22], 3],
    ['at the fail limit', [22, 30, 22], 3],
    ['above the fail limit', [22, 30.1, 22], 4],
    ['a dip', [22, 10, 22], 4],
    ['a jump that stays', [22, 32, 32], 1],
    ['a steep but steady rise', [22, 32, 42], 1],
    ['missing before it', [null, 30.1, 22], 2],
    ['missing after it', [22, 30.1, null], 2],
    ['itself missing', [22, null, 22], 9],
  ])('judges the sample before the newest: %s', (_why, values, flag) => {
    expect(flagOfMiddle(everyMinute(...values))).toBe(flag);
  });

  it.each([
    ['just near enough', 6 * MINUTE_MS, 4],
    ['too far', 6 * MINUTE_MS + 1, 2],
  ])('listens only to neighbours that are near in time: %s', (_why, gapMs, flag) => {
    const early = { timeMs: 0, value: 22 };
    const late = { timeMs: gapMs + MINUTE_MS, value: 22 };
    expect(flagOfMiddle([early, { timeMs: gapMs, value: 40 }, late])).toBe(flag);
    expect(flagOfMiddle([early, { timeMs: MINUTE_MS, value: 40 }, late])).toBe(flag);
  });

  it('by the average method doubts the corner of a genuine jump, by the differential method does not', () => {
    const jump = everyMinute(22, 22, 32);
    expect(flagOfMiddle(jump, 'average')).toBe(3);
    expect(flagOfMiddle(jump, 'differential')).toBe(1);
  });

  it('remembers two samples however many have come', () => {
    let memory = emptySpikeMemory;
    for (const sample of everyMinute(20, 21, 22, 23, 24)) memory = spike(memory, sample, limits).memory;
    expect(memory).toEqual({ recent: everyMinute(20, 21, 22, 23, 24).slice(-2) });
  });
});
