// The healing clock: elapsed hours without holds, and its inverse.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockHours, healingDay, instantOfClockHours } from '../../../shared/healing/batch-clock.ts';
import { DAY_MS, HOUR_MS } from '../../../shared/units.ts';
import { closedMs, timesOf } from './sample-plan.ts';

const at = (hours: number) => closedMs + hours * HOUR_MS;
const hold = (from: number, to: number | null) => ({ fromMs: at(from), toMs: to === null ? null : at(to) });

describe('the healing clock', () => {
  const rows = [
    { why: 'without holds it is elapsed time', holds: [], hours: 30, shows: 30 },
    { why: 'it shows 0 before closing', holds: [], hours: -5, shows: 0 },
    { why: 'a hold that is over is not counted', holds: [hold(10, 14)], hours: 30, shows: 26 },
    { why: 'it stands during a hold', holds: [hold(10, 14)], hours: 12, shows: 10 },
    { why: 'an open hold lasts until now', holds: [hold(20, null)], hours: 30, shows: 20 },
    { why: 'overlapping holds are counted once', holds: [hold(10, 14), hold(12, 16)], hours: 30, shows: 24 },
    { why: 'a hold within a hold adds nothing', holds: [hold(10, 20), hold(12, 16)], hours: 30, shows: 20 },
    { why: 'holds may come in any order', holds: [hold(20, 22), hold(10, 14)], hours: 30, shows: 24 },
    { why: 'what lies before closing holds nothing', holds: [hold(-10, 2)], hours: 30, shows: 28 },
    { why: 'a hold that ends before it begins is none', holds: [hold(14, 10)], hours: 30, shows: 30 },
  ];
  it.each(rows)('$why', ({ holds, hours, shows }) => {
    expect(clockHours(timesOf({ holds }), at(hours), at(30))).toBe(shows);
  });

  it('shows 0 while the chamber is not closed, and no instant for any hour', () => {
    const times = timesOf({ closedMs: null, openedMs: at(-2) });
    expect(clockHours(times, at(10), at(10))).toBe(0);
    expect(instantOfClockHours(times, 0, at(10))).toBeNull();
  });

  it('lets an open hold end when the batch was finished', () => {
    const times = timesOf({ holds: [hold(10, null)], finishedMs: at(12) });
    expect(clockHours(times, at(12), at(500))).toBe(10);
    expect(instantOfClockHours(times, 11, at(500))).toBe(at(13));
  });

  it('gives the beginning of a hold for an hour reached just then, and what follows after its end', () => {
    const times = timesOf({ holds: [hold(10, 14)] });
    expect(instantOfClockHours(times, 10, at(30))).toBe(at(10));
    expect(instantOfClockHours(times, 10.5, at(30))).toBe(at(14.5));
  });

  it('gives closing for hour 0 and for hours below', () => {
    expect(instantOfClockHours(timesOf(), 0, at(0))).toBe(closedMs);
    expect(instantOfClockHours(timesOf(), -3, at(0))).toBe(closedMs);
  });
});

const anyHolds = fc.array(
  fc.record({ fromMs: fc.integer({ min: -20, max: 200 }), lengthMs: fc.integer({ min: 0, max: 40 }) }).map((h) => ({
    fromMs: at(h.fromMs),
    toMs: at(h.fromMs + h.lengthMs),
  })),
  { maxLength: 5 },
);

describe('the healing clock, for any holds', () => {
  it('agrees with its inverse, which is the first instant of its hour', () => {
    fc.assert(
      fc.property(anyHolds, fc.integer({ min: 1, max: 200 * HOUR_MS }), (holds, shownMs) => {
        const times = timesOf({ holds });
        const instant = instantOfClockHours(times, shownMs / HOUR_MS, at(300)) ?? Number.NaN;
        expect(Math.round(clockHours(times, instant, at(300)) * HOUR_MS)).toBe(shownMs);
        expect(clockHours(times, instant - 1, at(300)) * HOUR_MS).toBeLessThan(shownMs - 0.5);
      }),
    );
  });

  it('adds up: what it shows and the hours held make the elapsed time', () => {
    fc.assert(
      fc.property(anyHolds, fc.integer({ min: 0, max: 250 }), (holds, hours) => {
        const isHeld = (hour: number) => holds.some(({ fromMs, toMs }) => fromMs <= at(hour) && at(hour) < toMs);
        const heldHours = Array.from({ length: hours }, (_, hour) => hour).filter(isHeld).length;
        expect(clockHours(timesOf({ holds }), at(hours), at(300)) + heldHours).toBe(hours);
      }),
    );
  });

  it('never runs backwards and never faster than time', () => {
    fc.assert(
      fc.property(anyHolds, fc.integer({ max: 300 }), fc.integer({ min: 0, max: 50 }), (holds, hours, later) => {
        const times = timesOf({ holds });
        const gained = clockHours(times, at(hours + later), at(400)) - clockHours(times, at(hours), at(400));
        expect(gained).toBeGreaterThanOrEqual(0);
        expect(gained).toBeLessThanOrEqual(later);
      }),
    );
  });
});

describe('the healing day', () => {
  const rows = [
    { why: 'is 0 before closing', atMs: closedMs - 1, day: 0 },
    { why: 'is 1 at closing', atMs: closedMs, day: 1 },
    { why: 'is 1 to the last moment of the first 24 h', atMs: closedMs + DAY_MS - 1, day: 1 },
    { why: 'is 2 from 24 h on', atMs: closedMs + DAY_MS, day: 2 },
    { why: 'is 5 when venting of the common practice may begin', atMs: closedMs + 4 * DAY_MS, day: 5 },
  ];
  it.each(rows)('$why', ({ atMs, day }) => {
    expect(healingDay(closedMs, atMs)).toBe(day);
  });
});
