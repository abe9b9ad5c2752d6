import { describe, expect, it } from 'vitest';
import { joinSamples, type TimedValue } from '../../../shared/exposure/segments.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const silenceMs = 15 * MINUTE_MS;

function at(minute: number, value: number): TimedValue {
  return { timeMs: minute * MINUTE_MS, value };
}

describe('segments between samples', () => {
  it('are straight lines over a gap of up to the silence, and unknown over a longer one', () => {
    const samples = [at(0, 20), at(15, 21), at(30.001, 25), at(31, 26)];
    expect([...joinSamples(samples, silenceMs)]).toEqual([
      { kind: 'line', fromMs: 0, toMs: 15 * MINUTE_MS, fromValue: 20, toValue: 21 },
      { kind: 'unknown', fromMs: 15 * MINUTE_MS, toMs: 30.001 * MINUTE_MS },
      { kind: 'line', fromMs: 30.001 * MINUTE_MS, toMs: 31 * MINUTE_MS, fromValue: 25, toValue: 26 },
    ]);
  });

  it.each([
    ['no sample', []],
    ['one sample', [at(0, 20)]],
    ['the same instant twice', [at(0, 20), at(0, 25)]],
  ])('there are none for %s', (_why, samples) => {
    expect([...joinSamples(samples, silenceMs)]).toEqual([]);
  });

  it('pass over a sample that is not later than the one before', () => {
    const kept = [at(0, 20), at(5, 21), at(10, 22)];
    const withStrays = [at(0, 20), at(5, 21), at(5, 99), at(3, 99), at(10, 22)];
    expect([...joinSamples(withStrays, silenceMs)]).toEqual([...joinSamples(kept, silenceMs)]);
  });

  it('come one at a time, without waiting for the end of an endless series', () => {
    function* endless() {
      for (let minute = 0; ; minute++) yield at(minute, minute);
    }
    const first = joinSamples(endless(), silenceMs).next();
    expect(first.value).toMatchObject({ fromMs: 0, toMs: MINUTE_MS });
  });
});
