// A simulated chamber's readings: repeatable, complete, and the same in the past and live.
import { describe, expect, it } from 'vitest';
import { type ChamberReadings, createLiveChamber } from '../../../server/demo/live-chamber.ts';
import { simulateChamber } from '../../../server/demo/simulate-chamber.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { closedMs, options } from './chamber-cases.ts';

describe('the readings', () => {
  const endMs = closedMs + 6 * HOUR_MS;

  it('are the same for the same options and differ for another seed', () => {
    const run = (seed: number): ChamberReadings[] => [...simulateChamber({ ...options, seed, endMs })];
    expect(run(5)).toEqual(run(5));
    expect(run(6)).not.toEqual(run(5));
  });

  it('come at every step from start to end, both included', () => {
    const times = [...simulateChamber({ ...options, endMs })].map((r) => r.timeMs);
    expect(times).toEqual(Array.from({ length: 361 }, (_, index) => closedMs + index * MINUTE_MS));
  });

  it('are none when the end lies before the start, and one when they meet', () => {
    expect([...simulateChamber({ ...options, endMs: closedMs - 1 })]).toEqual([]);
    expect([...simulateChamber({ ...options, endMs: closedMs })]).toHaveLength(1);
  });

  it('show no trace of where the series begins', () => {
    const at = closedMs + 48 * HOUR_MS;
    const [early, late] = [closedMs, at].map((startMs) =>
      [...simulateChamber({ ...options, startMs, endMs: at })].at(-1),
    );
    expect(Math.abs((early?.canopy[0].temperature ?? 0) - (late?.canopy[0].temperature ?? 99))).toBeLessThan(0.6);
  });

  it('have no film where none hangs, and share the weather when it is shared', () => {
    const one = createLiveChamber({ ...options, filmProbe: false, weatherSeed: 77 }).advanceTo(closedMs);
    const other = createLiveChamber({ ...options, seed: 6, weatherSeed: 77 }).advanceTo(closedMs);
    expect(one[0]?.film).toBeNull();
    expect(Math.abs((one[0]?.house.temperature ?? 0) - (other[0]?.house.temperature ?? 99))).toBeLessThan(0.4);
  });
});

describe('a live chamber', () => {
  it('says live what the series says of the past, however the way is cut', () => {
    const endMs = closedMs + 2 * HOUR_MS;
    const live = createLiveChamber(options);
    const parts = [closedMs, closedMs + 90 * SECOND_MS, closedMs + HOUR_MS, endMs].flatMap((timeMs) =>
      live.advanceTo(timeMs),
    );
    expect(parts).toEqual([...simulateChamber({ ...options, endMs })]);
  });

  it('has nothing to say before its next reading, nor when time runs backwards', () => {
    const live = createLiveChamber(options);
    expect(live.advanceTo(closedMs)).toHaveLength(1);
    expect(live.advanceTo(closedMs + 59 * SECOND_MS)).toEqual([]);
    expect(live.advanceTo(closedMs - HOUR_MS)).toEqual([]);
    expect(live.advanceTo(closedMs + MINUTE_MS)).toHaveLength(1);
  });

  it('can read at a quicker pace from now on', () => {
    const live = createLiveChamber(options);
    live.advanceTo(closedMs + 10 * MINUTE_MS);
    const times = live
      .advanceTo(closedMs + 12 * MINUTE_MS, 10 * SECOND_MS)
      .map((r) => (r.timeMs - closedMs) / SECOND_MS);
    expect(times).toEqual([660, 670, 680, 690, 700, 710, 720]);
  });

  it('is not moved by shading and opening in a steady scenario', () => {
    const [touched, left] = [createLiveChamber(options), createLiveChamber(options)];
    touched.shadeAndOpen(closedMs);
    expect(touched.advanceTo(closedMs + HOUR_MS)).toEqual(left.advanceTo(closedMs + HOUR_MS));
  });
});
