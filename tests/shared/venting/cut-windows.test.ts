import { describe, expect, test } from 'vitest';
import type { ClimateSample } from '../../../shared/exposure/day-figures.ts';
import { HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { cutWindows, type ExchangeRecord, gapChanges } from '../../../shared/venting/cut-windows.ts';
import { ratioOf } from './simulated-chamber.ts';

/** A reading a minute over `minutes`, of one air. */
function steady(minutes: number, temperature: number, humidity: number): ClimateSample[] {
  return Array.from({ length: minutes + 1 }, (_, i) => ({ timeMs: i * MINUTE_MS, temperature, humidity }));
}

const gap = (minutes: number, gapPercent: number) => ({ atMs: minutes * MINUTE_MS, kind: 'gap', gapPercent });
const entry = (minutes: number, kind: string) => ({ atMs: minutes * MINUTE_MS, kind, gapPercent: null });

const record: ExchangeRecord = {
  log: [gap(10, 20)],
  chamber: steady(300, 22, 90),
  house: steady(300, 20, 60),
  altitudeM: 0,
  silenceMs: 15 * MINUTE_MS,
  untilMs: 300 * MINUTE_MS,
};

/** First and last minute and readings of each window. */
function spansOf(changed: Partial<ExchangeRecord>) {
  return cutWindows({ ...record, ...changed }).windows.map(({ gapPercent, toMs, series }) => ({
    gapPercent,
    lastMinute: toMs / MINUTE_MS,
    readings: series.values.length,
  }));
}

describe('a window', () => {
  test('begins three minutes after the change and ends after two hours', () => {
    // Minutes 13 to 129: the reading at 130 is the first that is two hours later.
    expect(spansOf({})).toEqual([{ gapPercent: 20, lastMinute: 129, readings: 117 }]);
  });

  test.each([
    { log: [gap(10, 20), gap(60, 30)], lastMinute: 59, why: 'the next change ends it' },
    { log: [gap(10, 20), entry(45, 'mist')], lastMinute: 44, why: 'misting ends it' },
    { log: [gap(10, 20), entry(5, 'mist')], lastMinute: 129, why: 'misting before it does not' },
    { log: [gap(10, 20), entry(45, 'erect'), entry(50, 'note')], lastMinute: 129, why: 'other entries do not' },
    { log: [gap(10, 20), gap(60, 20)], lastMinute: 129, why: 'nor does an entry that changes nothing' },
  ])('$why', ({ log, lastMinute }) => {
    expect(spansOf({ log })[0]?.lastMinute).toBe(lastMinute);
  });

  test('ends where the record ends', () => {
    expect(spansOf({ untilMs: 40 * MINUTE_MS })[0]?.lastMinute).toBe(39);
  });

  test('ends before a silence of the house longer than allowed', () => {
    const without = (from: number, to: number) =>
      steady(300, 20, 60).filter(({ timeMs }) => timeMs <= from * MINUTE_MS || timeMs >= to * MINUTE_MS);
    expect(spansOf({ house: without(60, 75) })[0]?.lastMinute).toBe(129);
    expect(spansOf({ house: without(60, 76) })[0]?.lastMinute).toBe(60);
  });

  test('goes on over a silence of the chamber: the course between readings is known', () => {
    const chamber = record.chamber.filter(({ timeMs }) => timeMs < 40 * MINUTE_MS || timeMs > 80 * MINUTE_MS);
    expect(spansOf({ chamber })).toEqual([{ gapPercent: 20, lastMinute: 129, readings: 117 - 41 }]);
  });

  test('takes house readings between those of the chamber as they are', () => {
    const house = [0, 300].map((minute) => ({ timeMs: minute * MINUTE_MS, temperature: 20, humidity: 60 }));
    house.splice(1, 0, { timeMs: 30.5 * MINUTE_MS, temperature: 20, humidity: 80 });
    const { windows } = cutWindows({ ...record, house, silenceMs: 300 * MINUTE_MS });
    const steps = windows[0]?.series.steps ?? [];
    const peak = Math.max(...steps.map(({ houseTo }) => houseTo));
    const at = steps.find(({ houseTo }) => houseTo === peak);
    expect(at).toMatchObject({ reading: null });
    expect(at?.hours).toBeCloseTo(0.5 / 60, 10);
    expect(steps).toHaveLength(117);
  });

  test('is the longest stretch below the top of the sensor', () => {
    const chamber = record.chamber.map((sample) => {
      const minute = sample.timeMs / MINUTE_MS;
      return minute < 30 || minute === 45 ? { ...sample, humidity: 99.5 } : { ...sample, humidity: 99.4 };
    });
    expect(spansOf({ chamber })).toEqual([{ gapPercent: 20, lastMinute: 129, readings: 84 }]);
  });

  test('lays what the air lacks under it: saturation inside less house air', () => {
    const step = cutWindows(record).windows[0]?.series.steps[0];
    expect(step?.houseFrom).toBeCloseTo(ratioOf(20, 60), 6);
    expect(step?.driveFrom).toBeCloseTo(ratioOf(22, 100) - ratioOf(20, 60), 6);
  });
});

describe('a change without a window says why', () => {
  const saturated = steady(300, 22, 100);
  test.each([
    { given: { chamber: saturated }, why: 'saturated', because: 'the sensor stood at its top throughout' },
    { given: { house: [] }, why: 'no-house-air', because: 'no house probe' },
    { given: { house: steady(5, 20, 60) }, why: 'no-house-air', because: 'the house was heard only before' },
    { given: { chamber: [] }, why: 'too-few-readings', because: 'no readings' },
    { given: { untilMs: 20 * MINUTE_MS }, why: 'too-few-readings', because: 'seven readings so far' },
    {
      given: { chamber: record.chamber.map((sample) => ({ ...sample, temperature: null })) },
      why: 'too-few-readings',
      because: 'humidity without temperature is no humidity ratio',
    },
  ])('$why: $because', ({ given, why }) => {
    const { windows, unusable } = cutWindows({ ...record, ...given });
    expect(windows).toEqual([]);
    expect(unusable).toMatchObject([{ gapPercent: 20, atMs: 10 * MINUTE_MS, refusal: { why } }]);
  });

  test('eight readings are enough, and no fewer', () => {
    expect(spansOf({ untilMs: 21 * MINUTE_MS })).toEqual([{ gapPercent: 20, lastMinute: 20, readings: 8 }]);
  });
});

describe('the changes of the gap', () => {
  test.each([
    { log: [gap(2, 20), gap(1, 10)], gaps: [10, 20], why: 'in order of time' },
    { log: [gap(1, 10), gap(2, 10), gap(3, 0), gap(4, 10)], gaps: [10, 0, 10], why: 'repeats left out' },
    { log: [gap(1, 10), gap(1, 15)], gaps: [15], why: 'of two at one instant the later in the log' },
    { log: [entry(1, 'mist'), entry(2, 'gap')], gaps: [], why: 'an entry without a gap says nothing' },
  ])('$why', ({ log, gaps }) => {
    expect(gapChanges(log).map(({ gapPercent }) => gapPercent)).toEqual(gaps);
  });

  test('keep their instants', () => {
    expect(gapChanges([gap(60, 10)])).toEqual([{ atMs: HOUR_MS, gapPercent: 10 }]);
  });
});
