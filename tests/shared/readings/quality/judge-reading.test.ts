import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emptyProbeQualityMemory,
  type JudgedReading,
  judgeReading,
} from '../../../../shared/readings/quality/judge-reading.ts';
import { defaultQualityLimits as limits } from '../../../../shared/readings/quality/quality-limits.ts';
import type { AirSample } from '../../../../shared/readings/quality/wet-sensor.ts';
import { HOUR_MS, MINUTE_MS } from '../../../../shared/units.ts';

function judgeAll(samples: readonly AirSample[]): JudgedReading[] {
  let memory = emptyProbeQualityMemory;
  return samples.map((sample) => {
    const judged = judgeReading(memory, sample, limits);
    memory = judged.memory;
    return judged;
  });
}

/** One reading a minute: [temperature, humidity]. */
function everyMinute(...pairs: readonly (readonly [number | null, number | null])[]): AirSample[] {
  return pairs.map(([temperature, humidity], i) => ({ timeMs: i * MINUTE_MS, temperature, humidity }));
}

function flagsOf(judged: readonly JudgedReading[]) {
  return judged.map(({ temperatureFlag, humidityFlag }) => [temperatureFlag, humidityFlag]);
}

describe('the judge of one probe', () => {
  it('passes healing air and revises nothing', () => {
    const judged = judgeAll(everyMinute([22, 97], [22.1, 97.2], [22.1, 96.9], [22.3, 97]));
    expect(flagsOf(judged)).toEqual([
      [1, 1],
      [1, 1],
      [1, 1],
      [1, 1],
    ]);
    expect(judged.map((one) => one.revised)).toEqual([null, null, null, null]);
  });

  it('flags the two halves of a reading apart', () => {
    const judged = judgeAll(everyMinute([22, 103], [85, 97], [null, 97], [22, null]));
    expect(flagsOf(judged)).toEqual([
      [1, 3],
      [4, 1],
      [9, 1],
      [1, 9],
    ]);
  });

  it('tells with the next reading that the one before was a spike, and believes the next one', () => {
    const judged = judgeAll(everyMinute([22, 97], [22, 97], [31, 97], [22, 97]));
    expect(judged.map((one) => one.temperatureFlag)).toEqual([1, 1, 3, 1]);
    expect(judged.map((one) => one.humidityFlag)).toEqual([1, 1, 1, 1]);
    expect(judged.map((one) => one.revised)).toEqual([
      null,
      null,
      null,
      { timeMs: 2 * MINUTE_MS, temperatureFlag: 4, humidityFlag: 1 },
    ]);
  });

  it.each([
    ['as fast as air may go in two minutes', 28, 1],
    ['faster', 28.1, 3],
  ])('measures the rate after a spike from the reading before it: %s', (_why, temperature, flag) => {
    const judged = judgeAll(everyMinute([22, 97], [22, 97], [45, 97], [temperature, 97]));
    expect(judged.at(-1)).toMatchObject({ temperatureFlag: flag, revised: { temperatureFlag: 4 } });
  });

  it('keeps the other flag of a revised reading', () => {
    const judged = judgeAll(everyMinute([22, 97], [22, 102], [31, 102], [22, 97]));
    expect(judged[3]?.revised).toEqual({ timeMs: 2 * MINUTE_MS, temperatureFlag: 4, humidityFlag: 3 });
  });

  it('believes a tent that heats up at once and stays hot, but for the reading of the jump', () => {
    const judged = judgeAll(everyMinute([22, 97], [22, 97], [32, 97], [32, 97], [32.1, 97]));
    expect(judged.map((one) => one.temperatureFlag)).toEqual([1, 1, 3, 1, 1]);
    expect(judged.map((one) => one.revised)).toEqual([null, null, null, null, null]);
  });

  it('does not let a value that cannot be measured spoil the readings beside it', () => {
    const judged = judgeAll(everyMinute([22, 97], [-127, 97], [22, 97], [22, 97]));
    expect(judged.map((one) => one.temperatureFlag)).toEqual([1, 4, 1, 1]);
    expect(judged.map((one) => one.revised)).toEqual([null, null, null, null]);
  });

  it('doubts a temperature that stands still for three hours and fails it after six, and not the moving humidity', () => {
    const hours = Array.from({ length: 6 * 12 + 1 }, (_, i) => ({
      timeMs: (i * HOUR_MS) / 12,
      temperature: 22,
      humidity: 95 + (i % 3),
    }));
    const judged = judgeAll(hours);
    const at = (hour: number) => flagsOf(judged)[hour * 12];
    expect([at(0), at(2), at(3), at(5), at(6)]).toEqual([
      [1, 1],
      [1, 1],
      [3, 1],
      [3, 1],
      [4, 1],
    ]);
  });

  it('keeps the dryness watch seeing in a tent that is saturated for days, and says so beside the value', () => {
    const days = Array.from({ length: 3 * 288 }, (_, i) => ({
      timeMs: i * 5 * MINUTE_MS,
      temperature: 22 + Math.sin((2 * Math.PI * i) / 288),
      humidity: 100,
    }));
    const judged = judgeAll(days);
    expect(new Set(judged.map((one) => one.humidityFlag))).toEqual(new Set([1]));
    expect(judged.at(-1)?.saturatedOrWet).toBe(true);
  });

  it('doubts a humidity that stays at its top through a warm day, until it moves', () => {
    const warm = Array.from({ length: 61 }, (_, i) => ({
      timeMs: i * 5 * MINUTE_MS,
      temperature: 21 + i / 12,
      humidity: i === 60 ? 96 : 100,
    }));
    const judged = judgeAll(warm);
    expect([judged[35], judged[36], judged[59], judged[60]].map((one) => one?.humidityFlag)).toEqual([1, 3, 3, 1]);
    expect(new Set(judged.map((one) => one.temperatureFlag))).toEqual(new Set([1]));
  });

  it('does not take a spiking temperature for warming air', () => {
    const samples = Array.from({ length: 61 }, (_, i) => ({
      timeMs: i * 5 * MINUTE_MS,
      temperature: i === 20 ? 70 : 21 + (i % 2) / 10,
      humidity: 100,
    }));
    expect(judgeAll(samples).at(-1)?.humidityFlag).toBe(1);
  });
});

describe('the judge and time order', () => {
  const [first, second] = everyMinute([22, 97], [22.1, 97]) as [AirSample, AirSample];

  it.each([
    ['an older reading', { ...first, temperature: 90, humidity: 101 }, [4, 3]],
    ['an older harmless one', { ...first, temperature: 30 }, [1, 1]],
    ['a repeat', second, [1, 1]],
    ['a repeat with other values', { ...second, temperature: 61 }, [3, 1]],
  ])('gives %s the gross range only and forgets nothing', (_why, late, flags) => {
    const memory = judgeAll([first, second])[1]?.memory ?? emptyProbeQualityMemory;
    const judged = judgeReading(memory, late, limits);
    expect(judged.memory).toBe(memory);
    expect(flagsOf([judged])).toEqual([flags]);
    expect(judged.revised).toBeNull();
  });

  it('judges halves that come in messages of their own as it judges whole readings', () => {
    const whole = everyMinute([22, 97], [22, 97], [31, 60], [22, 97], [22, 97], [22.1, 96]);
    const halves = whole.flatMap((one) => [
      { ...one, humidity: null },
      { ...one, temperature: null },
    ]);
    expect(settledFlags(halves)).toEqual(settledFlags(whole));
  });

  it('keeps the flag of the half it knows when the other comes', () => {
    const [, , third] = judgeAll([
      first,
      { ...second, temperature: 30, humidity: null },
      { ...second, temperature: 30 },
    ]);
    expect(flagsOf(third === undefined ? [] : [third])).toEqual([[3, 1]]);
  });

  it('does not judge a spike over a reading in which the quantity was missing', () => {
    const judged = judgeAll(everyMinute([22, 97], [31, 97], [null, 97], [22, 97]));
    expect(judged.map((one) => one.revised)).toEqual([null, null, null, null]);
  });
});

/** The flags of every time after all revisions. */
function settledFlags(samples: readonly AirSample[]) {
  const flags = new Map<number, { temperatureFlag: number; humidityFlag: number }>();
  const judged = judgeAll(samples);
  samples.forEach(({ timeMs }, i) => {
    const one = judged[i];
    if (one === undefined) return;
    const { temperatureFlag, humidityFlag, revised } = one;
    flags.set(timeMs, { temperatureFlag, humidityFlag });
    if (revised !== null) {
      flags.set(revised.timeMs, { temperatureFlag: revised.temperatureFlag, humidityFlag: revised.humidityFlag });
    }
  });
  return flags;
}

describe('the memory of the judge', () => {
  const value = fc.option(fc.double({ min: -50, max: 120, noNaN: true }), { nil: null });
  const readings = fc.array(fc.tuple(value, value), { maxLength: 60 });

  it('is plain JSON: judging goes on the same after a restart between any two readings', () => {
    fc.assert(
      fc.property(readings, (pairs) => {
        let memory = emptyProbeQualityMemory;
        const restarted = everyMinute(...pairs).map((sample) => {
          const judged = judgeReading(JSON.parse(JSON.stringify(memory)), sample, limits);
          memory = judged.memory;
          return judged;
        });
        expect(flagsOf(restarted)).toEqual(flagsOf(judgeAll(everyMinute(...pairs))));
      }),
    );
  });

  it('does not grow', () => {
    fc.assert(
      fc.property(readings, (pairs) => {
        const last = judgeAll(everyMinute(...pairs)).at(-1);
        expect(JSON.stringify(last?.memory ?? null).length).toBeLessThan(2000);
      }),
    );
  });

  it('only ever makes a flag graver when it revises', () => {
    const rank = [9, 2, 1, 3, 4];
    fc.assert(
      fc.property(readings, (pairs) => {
        const judged = judgeAll(everyMinute(...pairs));
        judged.forEach(({ revised }, i) => {
          const before = judged[i - 1];
          if (revised === null || before === undefined) return;
          expect(rank.indexOf(revised.temperatureFlag)).toBeGreaterThanOrEqual(rank.indexOf(before.temperatureFlag));
          expect(rank.indexOf(revised.humidityFlag)).toBeGreaterThanOrEqual(rank.indexOf(before.humidityFlag));
        });
      }),
    );
  });
});
