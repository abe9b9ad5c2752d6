// When the air is disturbed on purpose: by work in the tent, by a step of venting.
import { describe, expect, it } from 'vitest';
import { type DisturbanceEntry, suppressionAt } from '../../../shared/alarms/suppression.ts';
import { MINUTE_MS } from '../../../shared/units.ts';

const entry = (kind: string, atMinute: number, more: Partial<DisturbanceEntry> = {}): DisturbanceEntry => ({
  kind,
  atMs: atMinute * MINUTE_MS,
  person: 'Ann',
  gapPercent: null,
  ...more,
});
const work = (atMinute: number, minutes: number) => entry('working', atMinute, { minutes });
const gap = (atMinute: number, gapPercent: number) => entry('gap', atMinute, { gapPercent, person: 'Ben' });
const at = (log: readonly DisturbanceEntry[], minute: number) => suppressionAt(log, minute * MINUTE_MS);

describe('work in the tent', () => {
  it.each([
    { minute: -0.1, is: false, why: 'not yet begun' },
    { minute: 0, is: true, why: 'from the moment it is logged' },
    { minute: 29.9, is: true, why: 'its 20 minutes and 10 more for the air to come back' },
    { minute: 30, is: false, why: 'over' },
  ])('quiets at minute $minute: $is, $why', ({ minute, is }) => {
    expect(at([work(0, 20)], minute) !== null).toBe(is);
  });

  it('says until when and who', () => {
    expect(at([work(0, 20)], 5)).toEqual({ cause: 'working', untilMs: 30 * MINUTE_MS, person: 'Ann' });
  });

  it('ends early when it is done, and the air still has its ten minutes', () => {
    const log = [work(0, 60), entry('work-done', 15)];
    expect(at(log, 24.9)?.untilMs).toBe(25 * MINUTE_MS);
    expect(at(log, 25)).toBeNull();
  });

  it('is not made longer by being done late, nor ended by what was done before it', () => {
    expect(at([work(0, 20), entry('work-done', 50)], 55)).toBeNull();
    expect(at([entry('work-done', 0), work(1, 20)], 5)?.cause).toBe('working');
  });
});

describe('a step of venting', () => {
  it.each([
    { log: [gap(0, 10)], minute: 29.9, is: true, why: 'it settles for half an hour' },
    { log: [gap(0, 10)], minute: 30, is: false, why: 'it has settled' },
    { log: [gap(0, 0)], minute: 5, is: false, why: 'a closed tent that is logged closed has made no step' },
    { log: [gap(-60, 10), gap(0, 10)], minute: 5, is: false, why: 'the same gap again is no step' },
    { log: [gap(-60, 10), gap(0, 0)], minute: 5, is: true, why: 'closing is a step too' },
    { log: [gap(0, 10), entry('mist', 40)], minute: 45, is: false, why: 'mist is none' },
  ])('$why', ({ log, minute, is }) => {
    expect(at(log, minute) !== null).toBe(is);
  });
});

it('of two causes the one that lasts longer is told', () => {
  expect(at([gap(0, 10), work(5, 5)], 6)).toMatchObject({ cause: 'vent-step', person: 'Ben' });
  expect(at([gap(0, 10), work(5, 30)], 6)).toMatchObject({ cause: 'working', person: 'Ann' });
});
