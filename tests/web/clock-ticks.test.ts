// Ticks at round local times, also where the site's clock is put forward or back.
import { describe, expect, test } from 'vitest';
import { clockTicks, constantStretches, tickStepMinutes } from '../../web/strip/clock-ticks.ts';
import { axisLabels } from '../../web/strip/paint-axes.ts';
import { clockTime, dayAndTime, instantOfWallTime, wallTime, zoneOffsetMs } from '../../web/when.ts';

const zone = 'Europe/Amsterdam';
const at = Date.parse;
const hour = 3_600_000;

describe('the step of a scale is round and gives no more ticks than fit', () => {
  test.each([
    [hour, 12, 5],
    [hour, 11, 10],
    [6 * hour, 12, 30],
    [24 * hour, 8, 180],
    [9 * 24 * hour, 9, 1440],
    [9 * 24 * hour, 8, 2880],
  ])('%i ms with at most %i ticks: every %i minutes', (spanMs, most, minutes) => {
    expect(tickStepMinutes(spanMs, most)).toBe(minutes);
  });
});

describe('ticks stand at round times of the site', () => {
  const times = (from: string, to: string, where: string, most: number) =>
    clockTicks(at(from), at(to), where, most).map((ms) => clockTime(ms, where));

  test('on a plain day', () => {
    expect(times('2026-03-02T05:10:00Z', '2026-03-02T23:50:00Z', zone, 4)).toEqual(['12:00', '18:00', '00:00']);
  });
  test('on the day the clock is put forward, 02:00 does not exist and no tick moves off the hour', () => {
    expect(times('2026-03-28T22:00:00Z', '2026-03-29T10:00:00Z', zone, 5)).toEqual([
      ...['00:00', '03:00', '06:00', '09:00', '12:00'],
    ]);
  });
  test('on the day it is put back, 06:00 is 06:00', () => {
    expect(times('2026-10-24T21:00:00Z', '2026-10-25T12:00:00Z', zone, 4)).toEqual(['00:00', '06:00', '12:00']);
  });
  test('in a zone with a quarter of an hour', () => {
    expect(times('2026-03-02T00:00:00Z', '2026-03-02T06:00:00Z', 'Asia/Kathmandu', 6)).toEqual([
      ...['06:00', '07:00', '08:00', '09:00', '10:00', '11:00'],
    ]);
  });
});

describe('where the clock is moved by half an hour (Lord Howe Island)', () => {
  const island = 'Australia/Lord_Howe';
  const label = (ms: number) => clockTime(ms, island);

  test('put forward at 02:00 to 02:30: no tick stands at the half hour that is skipped', () => {
    // 2026-10-03T15:30Z is 02:00 at +10:30, and 02:30 at +11:00.
    const ticks = clockTicks(at('2026-10-03T14:00:00Z'), at('2026-10-03T17:00:00Z'), island, 12);
    expect(ticks.map(label)).toEqual(['00:30', '00:45', '01:00', '01:15', '01:30', '01:45', ...after0230]);
    expect(ticks[6]).toBe(at('2026-10-03T15:30:00Z'));
  });
  const after0230 = ['02:30', '02:45', '03:00', '03:15', '03:30', '03:45', '04:00'];

  test('put back at 02:00 to 01:30: the half hour that comes twice has its ticks twice', () => {
    // 2026-04-04T15:00Z is 02:00 at +11:00, and 01:30 at +10:30.
    const ticks = clockTicks(at('2026-04-04T14:00:00Z'), at('2026-04-04T16:30:00Z'), island, 6);
    expect(ticks.map(label)).toEqual(['01:00', '01:30', '01:30', '02:00', '02:30', '03:00']);
  });

  test('days begin at their own midnight on both sides of it', () => {
    const ticks = clockTicks(at('2026-10-02T00:00:00Z'), at('2026-10-06T00:00:00Z'), island, 5);
    expect(ticks.map((ms) => new Date(ms).toISOString())).toEqual([
      ...['2026-10-02T13:30:00.000Z', '2026-10-03T13:30:00.000Z', '2026-10-04T13:00:00.000Z'],
      '2026-10-05T13:00:00.000Z',
    ]);
  });
});

test('a day whose midnight is skipped begins when its clock does', () => {
  // Havana goes from 00:00 to 01:00 on 8 March 2026.
  const ticks = clockTicks(at('2026-03-07T00:00:00Z'), at('2026-03-10T00:00:00Z'), 'America/Havana', 4);
  expect(ticks.map((ms) => clockTime(ms, 'America/Havana'))).toEqual(['00:00', '01:00', '00:00']);
});

test('a window with two moves of the clock between equal ends is cut at both', () => {
  // Casablanca leaves +01:00 for Ramadan and comes back to it.
  const zoneOf = 'Africa/Casablanca';
  const stretches = constantStretches(at('2026-02-10T00:00:00Z'), at('2026-03-30T00:00:00Z'), zoneOf);
  expect(stretches.map(({ offsetMs }) => offsetMs / hour)).toEqual([1, 0, 1]);
});

describe('the axis says the time of the site, and the day where one begins', () => {
  test('a night', () => {
    const window = { fromSec: at('2026-03-02T19:00:00Z') / 1000, toSec: at('2026-03-03T07:00:00Z') / 1000 };
    expect(axisLabels(window, 320, zone).map(({ text }) => text)).toEqual(['21:00', 'Tue 3', '03:00', '06:00']);
  });
  test('nine days on a phone have their days', () => {
    const window = { fromSec: at('2026-03-02T12:00:00Z') / 1000, toSec: at('2026-03-11T12:00:00Z') / 1000 };
    expect(axisLabels(window, 290, zone).length).toBeGreaterThan(3);
  });
});

describe('an instant is said as people at the site say it', () => {
  const now = at('2026-03-02T13:00:00Z');
  test.each([
    ['2026-03-02T15:00:00Z', '16:00', 'today'],
    ['2026-03-02T22:59:00Z', '23:59', 'still today at the site'],
    ['2026-03-02T23:00:00Z', 'tomorrow 00:00', 'midnight belongs to tomorrow'],
    ['2026-03-01T22:59:00Z', 'yesterday 23:59', 'the evening before'],
    ['2026-03-06T08:00:00Z', 'Fri 09:00', 'within six days by weekday'],
    ['2026-03-20T08:00:00Z', '20 Mar 09:00', 'further away by date'],
  ])('%s is "%s" (%s)', (instant, said) => {
    expect(dayAndTime(at(instant), now, zone)).toBe(said);
  });
});

test('a local time that was typed is the instant it means, summer and winter', () => {
  expect(instantOfWallTime('2026-01-15T16:00', zone)).toBe(at('2026-01-15T15:00:00Z'));
  expect(instantOfWallTime('2026-07-15T16:00', zone)).toBe(at('2026-07-15T14:00:00Z'));
  expect(instantOfWallTime('no time', zone)).toBeNull();
});

test('an instant written for a date field reads back to the same minute', () => {
  const instant = at('2026-07-15T14:07:00Z');
  expect(wallTime(instant, zone)).toBe('2026-07-15T16:07');
  expect(instantOfWallTime(wallTime(instant, zone), zone)).toBe(instant);
});

test('the offset of a zone is what its clock is ahead', () => {
  expect(zoneOffsetMs(at('2026-01-15T15:00:00Z'), zone)).toBe(hour);
  expect(zoneOffsetMs(at('2026-07-15T15:00:00.400Z'), zone)).toBe(2 * hour);
});
