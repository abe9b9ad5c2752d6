// The one series that a record's statistics are made from: exact for one probe, a median for several, never across a silence.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ChamberSeries } from '../../../server/record/chamber-series.ts';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import type { Flag, Reading } from '../../../shared/readings/reading.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

interface Heard {
  readonly probe: number;
  readonly minute: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly temperatureFlag?: Flag;
  readonly humidityFlag?: Flag;
}

function reading({ minute, temperature, humidity, temperatureFlag = 1, humidityFlag = 1 }: Heard): Reading {
  const timeMs = minute * MINUTE_MS;
  return { timeMs, temperature, humidity, temperatureFlag, humidityFlag, receivedMs: timeMs, late: false };
}

function seriesOf(silenceMinutes: readonly number[], heard: readonly Heard[]): ClimateSample[] {
  const series = new ChamberSeries(silenceMinutes.map((minutes) => minutes * MINUTE_MS));
  return [...heard.flatMap((one) => series.add(one.probe, reading(one))), ...series.end()];
}

function temperatures(samples: readonly ClimateSample[]): [number, number | null][] {
  return samples.map(({ timeMs, temperature }) => [timeMs / MINUTE_MS, temperature]);
}

const flag = fc.constantFrom<Flag>(1, 2, 3, 4);
const value = fc.option(fc.double({ min: -20, max: 100, noNaN: true }));

describe('one canopy probe', () => {
  it('is its good readings themselves, to the last bit', () => {
    const minutes = fc.uniqueArray(fc.integer({ min: 0, max: 5000 }), { maxLength: 40 });
    const one = fc.record({ temperature: value, humidity: value, temperatureFlag: flag, humidityFlag: flag });
    fc.assert(
      fc.property(minutes, fc.array(one, { minLength: 40, maxLength: 40 }), (times, values) => {
        const heard = times
          .sort((a, b) => a - b)
          .map((minute, i) => ({ probe: 0, minute, ...values[i] }) as Required<Heard>);
        const expected = heard.map(({ minute, temperature, humidity, temperatureFlag, humidityFlag }) => ({
          timeMs: minute * MINUTE_MS,
          temperature: temperatureFlag <= 2 ? temperature : null,
          humidity: humidityFlag <= 2 ? humidity : null,
        }));
        expect(seriesOf([15], heard)).toEqual(expected);
      }),
    );
  });
});

describe('several canopy probes', () => {
  it('counts a probe between its readings with the straight line', () => {
    const heard = [
      { probe: 0, minute: 0, temperature: 20, humidity: 90 },
      { probe: 1, minute: 0, temperature: 30, humidity: 80 },
      { probe: 0, minute: 5, temperature: 21, humidity: 90 },
      { probe: 1, minute: 10, temperature: 32, humidity: 80 },
      { probe: 0, minute: 10, temperature: 22, humidity: 90 },
    ];
    // At minute 5 the second probe stands at 31, half-way between 30 and 32.
    expect(temperatures(seriesOf([15, 15], heard))).toEqual([
      [0, 25],
      [5, 26],
      [10, 27],
    ]);
  });

  it('takes the middle one of three, so that one that is off does not count', () => {
    const heard = [21, 45, 22].map((temperature, probe) => ({ probe, minute: 0, temperature, humidity: null }));
    expect(temperatures(seriesOf([15, 15, 15], heard))).toEqual([[0, 22]]);
  });

  const silences: [string, number, [number, number | null][]][] = [
    [
      'a silence of exactly the allowed length is bridged',
      15,
      [
        [0, 25],
        [7, 27],
        [15, 30],
      ],
    ],
    [
      'a silence a minute longer is not: the probe that spoke counts alone',
      14,
      [
        [0, 25],
        [7, 20],
        [15, 30],
      ],
    ],
  ];
  it.each(silences)('%s', (_, silence, expected) => {
    const heard = [
      { probe: 0, minute: 0, temperature: 20, humidity: null },
      { probe: 1, minute: 0, temperature: 30, humidity: null },
      { probe: 0, minute: 7, temperature: 20, humidity: null },
      { probe: 0, minute: 15, temperature: 20, humidity: null },
      { probe: 1, minute: 15, temperature: 40, humidity: null },
    ];
    const found = temperatures(seriesOf([15, silence], heard));
    // The line of the second probe at minute 7: 30 + 10 · 7/15, with 20 its mean is 27.33.
    expect(found.map(([minute, t]) => [minute, t === null ? null : Math.floor(t)])).toEqual(expected);
  });

  it('gives the line of a slow probe in points close enough to be joined, when it goes on alone', () => {
    const heard = [
      { probe: 0, minute: 0, temperature: 20, humidity: null },
      { probe: 1, minute: 0, temperature: 20, humidity: null },
      { probe: 1, minute: 28, temperature: 48, humidity: null },
    ];
    const found = temperatures(seriesOf([10, 30], heard));
    expect(found.at(-1)).toEqual([28, 48]);
    for (const [minute, t] of found) expect(t).toBeCloseTo(20 + minute, 9);
    const minutes = found.map(([minute]) => minute);
    expect(Math.max(...minutes.slice(1).map((minute, i) => minute - (minutes[i] ?? 0)))).toBeLessThanOrEqual(10);
  });

  it('leaves the silence of all of them open', () => {
    const heard = [
      { probe: 0, minute: 0, temperature: 20, humidity: null },
      { probe: 1, minute: 0, temperature: 20, humidity: null },
      { probe: 1, minute: 31, temperature: 48, humidity: null },
    ];
    expect(temperatures(seriesOf([10, 30], heard)).map(([minute]) => minute)).toEqual([0, 31]);
  });

  it('takes a probe that is first heard at the same instant into that instant', () => {
    const heard = [
      { probe: 0, minute: 0, temperature: 20, humidity: null },
      { probe: 0, minute: 1, temperature: 20, humidity: null },
      { probe: 1, minute: 1, temperature: 30, humidity: null },
    ];
    expect(temperatures(seriesOf([15, 15], heard))).toEqual([
      [0, 20],
      [1, 25],
    ]);
  });

  it('agrees with the rule worked out over the whole series at once', () => {
    const one = fc.record({
      probe: fc.integer({ min: 0, max: 2 }),
      step: fc.integer({ min: 0, max: 9 }),
      temperature: value,
      temperatureFlag: flag,
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 60 }), (steps) => {
        let minute = 0;
        const used = new Set<string>();
        const heard = steps.flatMap(({ probe, step, temperature, temperatureFlag }) => {
          minute += step;
          if (used.has(`${probe} ${minute}`)) return [];
          used.add(`${probe} ${minute}`);
          return [{ probe, minute, temperature, humidity: null, temperatureFlag }];
        });
        expect(temperatures(seriesOf([12, 12, 12], heard))).toEqual(allAtOnce(heard, 12));
      }),
      { numRuns: 300 },
    );
  });
});

/** The rule of the record's "computation" text, straight from its words. */
function allAtOnce(heard: readonly Heard[], silence: number): [number, number | null][] {
  const instants = [...new Set(heard.map(({ minute }) => minute))].sort((a, b) => a - b);
  return instants.map((minute) => {
    const values = [0, 1, 2].flatMap(
      (probe) =>
        lineValue(
          heard.filter((one) => one.probe === probe),
          minute,
          silence,
        ) ?? [],
    );
    const sorted = values.sort((a, b) => a - b);
    const [low, high] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.floor(sorted.length / 2)]];
    return [minute, low === undefined || high === undefined ? null : (low + high) / 2];
  });
}

function lineValue(own: readonly Heard[], minute: number, silence: number): number | null {
  const good = own.filter(({ temperature, temperatureFlag = 1 }) => temperature !== null && temperatureFlag <= 2);
  const here = own.find((one) => one.minute === minute);
  if (here !== undefined) return good.includes(here) ? here.temperature : null;
  const before = good.findLast((one) => one.minute < minute);
  const after = good.find((one) => one.minute > minute);
  if (before?.temperature == null || after?.temperature == null || after.minute - before.minute > silence) return null;
  const share = (minute - before.minute) / (after.minute - before.minute);
  return before.temperature + (after.temperature - before.temperature) * share;
}
