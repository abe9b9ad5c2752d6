// A run of the quality tests: the same flags from any checkpoint as from the beginning.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyProbeQualityMemory } from '../../../../shared/readings/quality/judge-reading.ts';
import { defaultQualityLimits } from '../../../../shared/readings/quality/quality-limits.ts';
import { QualityRun, SLOT_MS, slotOf } from '../../../../shared/readings/quality/quality-run.ts';
import type { AirSample } from '../../../../shared/readings/quality/wet-sensor.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';

const START_MS = Date.parse('2026-03-01T00:00:00Z');

function runOver(samples: readonly AirSample[], memory = emptyProbeQualityMemory): QualityRun {
  const run = new QualityRun(memory);
  for (const sample of samples) run.add(sample, defaultQualityLimits);
  return run;
}

const air = (timeMs: number, temperature: number): AirSample => ({ timeMs, temperature, humidity: 95 });

describe('a slot', () => {
  it.each([
    [0, 0],
    [SLOT_MS - 1, 0],
    [SLOT_MS, SLOT_MS],
  ])('%i ms after midnight UTC begins at %i', (afterMs, beginMs) => {
    expect(slotOf(START_MS + afterMs) - START_MS).toBe(beginMs);
  });
});

describe('a run', () => {
  it('gives the flag of a reading that the next one shows to be a spike', () => {
    const run = runOver([air(START_MS, 21), air(START_MS + MINUTE_MS, 26), air(START_MS + 2 * MINUTE_MS, 21)]);
    expect(run.judged.map(({ temperatureFlag }) => temperatureFlag)).toEqual([1, 3, 1]);
  });

  it('keeps a memory before the first reading of each slot, the very first included', () => {
    const hours = [0, 5.9, 6, 7, 19];
    const run = runOver(hours.map((hour) => air(START_MS + hour * HOUR_MS, 21 + hour)));
    expect(run.checkpoints.map(({ slotMs, memory }) => [slotMs - START_MS, memory.timeMs])).toEqual([
      [0, null],
      [6 * HOUR_MS, START_MS + 5.9 * HOUR_MS],
      [18 * HOUR_MS, START_MS + 7 * HOUR_MS],
    ]);
  });

  it('begins with the flags of the reading before it', () => {
    const first = runOver([air(START_MS, 21), air(START_MS + MINUTE_MS, 26)]);
    const run = runOver([air(START_MS + 2 * MINUTE_MS, 21)], first.state.memory);
    expect(run.judged).toEqual([
      { timeMs: START_MS + MINUTE_MS, temperatureFlag: 3, humidityFlag: 1 },
      { timeMs: START_MS + 2 * MINUTE_MS, temperatureFlag: 1, humidityFlag: 1 },
    ]);
  });

  it('from any of its checkpoints, also one that was written and read, goes on as it did', () => {
    const sample = fc.record({
      stepMs: fc.constantFrom(MINUTE_MS, 20 * MINUTE_MS, HOUR_MS, 5 * HOUR_MS),
      temperature: fc.constantFrom(21, 21.001, 24.5, 29, 90, null),
      humidity: fc.constantFrom(94, 99.7, 100, 101, 60, null),
    });
    fc.assert(
      fc.property(fc.array(sample, { minLength: 1, maxLength: 60 }), fc.nat(20), (steps, chosen) => {
        let timeMs = START_MS;
        const samples = steps.map(({ stepMs, temperature, humidity }) => {
          timeMs += stepMs;
          return { timeMs, temperature, humidity };
        });
        const whole = runOver(samples);
        const checkpoint = whole.checkpoints[chosen % whole.checkpoints.length];
        if (checkpoint === undefined) throw new Error('a run has a checkpoint');
        const memory = JSON.parse(JSON.stringify(checkpoint.memory)) as typeof checkpoint.memory;
        const rest = runOver(
          samples.filter((one) => one.timeMs >= checkpoint.slotMs),
          memory,
        );
        expect(rest.judged).toEqual(whole.judged.slice(-rest.judged.length));
        expect(rest.state).toEqual(whole.state);
      }),
    );
  });
});
