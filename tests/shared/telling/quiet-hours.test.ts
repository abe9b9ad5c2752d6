// Quiet hours: both ends, midnight, and the nights on which the clock is moved.
import { describe, expect, it } from 'vitest';
import { isQuiet } from '../../../shared/telling/quiet-hours.ts';

const night = { quietFrom: '22:00', quietTo: '06:30' };
const noon = { quietFrom: '12:00', quietTo: '13:00' };

it.each([
  { hours: night, zone: 'UTC', at: '2026-03-01T21:59:59Z', quiet: false, why: 'a second before' },
  { hours: night, zone: 'UTC', at: '2026-03-01T22:00:00Z', quiet: true, why: 'they begin' },
  { hours: night, zone: 'UTC', at: '2026-03-02T00:00:00Z', quiet: true, why: 'through midnight' },
  { hours: night, zone: 'UTC', at: '2026-03-02T06:29:59Z', quiet: true, why: 'to their end' },
  { hours: night, zone: 'UTC', at: '2026-03-02T06:30:00Z', quiet: false, why: 'the end is not part of them' },
  { hours: noon, zone: 'UTC', at: '2026-03-02T12:30:00Z', quiet: true, why: 'within a day too' },
  { hours: noon, zone: 'UTC', at: '2026-03-02T13:00:00Z', quiet: false, why: 'to their end' },
  { hours: night, zone: 'Europe/Amsterdam', at: '2026-03-28T21:00:00Z', quiet: true, why: '22:00 in winter' },
  { hours: night, zone: 'Europe/Amsterdam', at: '2026-03-29T04:30:00Z', quiet: false, why: '06:30 in summer time' },
  {
    hours: night,
    zone: 'Europe/Amsterdam',
    at: '2026-10-25T04:30:00Z',
    quiet: true,
    why: '05:30 in winter time again',
  },
  {
    hours: night,
    zone: 'Australia/Lord_Howe',
    at: '2026-10-03T19:30:00Z',
    quiet: false,
    why: '06:30 after half an hour',
  },
  {
    hours: { quietFrom: '00:00', quietTo: '00:00' },
    zone: 'UTC',
    at: '2026-03-02T15:00:00Z',
    quiet: true,
    why: 'equal ends are the whole day',
  },
  { hours: { quietFrom: null, quietTo: null }, zone: 'UTC', at: '2026-03-02T03:00:00Z', quiet: false, why: 'none' },
])('$at in $zone is quiet: $quiet, for $why', ({ hours, zone, at, quiet }) => {
  expect(isQuiet(hours, zone, Date.parse(at))).toBe(quiet);
});

// What the clock shows twice is quiet once: somebody who set "until 02:30" has slept until 02:30 when the clock first shows it, and is not sent back
// to bed by the second pass. Instants are given in UTC, so that the two passes can be told apart.
const nights: readonly { zone: string; why: string; rows: [string, string, string, boolean, string][] }[] = [
  {
    zone: 'Europe/Amsterdam',
    why: '03:00 becomes 02:00 on 2026-10-25 at 01:00 UTC',
    rows: [
      ['22:00', '02:30', '2026-10-25T00:29:59Z', true, '02:29:59, first pass'],
      ['22:00', '02:30', '2026-10-25T00:30:00Z', false, '02:30 for the first time'],
      ['22:00', '02:30', '2026-10-25T01:15:00Z', false, '02:15 again'],
      ['02:30', '06:00', '2026-10-25T00:29:59Z', false, 'not begun'],
      ['02:30', '06:00', '2026-10-25T00:30:00Z', true, '02:30 for the first time'],
      ['02:30', '06:00', '2026-10-25T01:15:00Z', true, '02:15 again lies after the beginning'],
      ['02:30', '06:00', '2026-10-25T04:59:59Z', true, '05:59:59 in winter time'],
      ['02:30', '06:00', '2026-10-25T05:00:00Z', false, '06:00 in winter time'],
      ['02:15', '02:45', '2026-10-25T01:20:00Z', false, 'half an hour was half an hour'],
      ['22:00', '06:00', '2026-10-25T01:15:00Z', true, 'a night around both passes is one'],
    ],
  },
  {
    zone: 'America/New_York',
    why: '02:00 becomes 01:00 on 2026-11-01 at 06:00 UTC',
    rows: [
      ['21:00', '01:30', '2026-11-01T05:29:59Z', true, '01:29:59, first pass'],
      ['21:00', '01:30', '2026-11-01T05:30:00Z', false, '01:30 for the first time'],
      ['21:00', '01:30', '2026-11-01T06:10:00Z', false, '01:10 again'],
      ['01:30', '05:00', '2026-11-01T06:10:00Z', true, '01:10 again lies after the beginning'],
    ],
  },
  {
    zone: 'Australia/Lord_Howe',
    why: '02:00 becomes 01:30 on 2026-04-05 at 15:00 UTC the day before',
    rows: [
      ['22:00', '01:45', '2026-04-04T14:44:59Z', true, '01:44:59, first pass'],
      ['22:00', '01:45', '2026-04-04T14:45:00Z', false, '01:45 for the first time'],
      ['22:00', '01:45', '2026-04-04T15:10:00Z', false, '01:40 again'],
      ['01:45', '06:00', '2026-04-04T15:10:00Z', true, '01:40 again lies after the beginning'],
    ],
  },
  {
    zone: 'Europe/Amsterdam',
    why: '02:00 becomes 03:00 on 2026-03-29 at 01:00 UTC',
    rows: [
      ['22:00', '02:30', '2026-03-29T00:59:59Z', true, 'until the hour that is skipped'],
      ['22:00', '02:30', '2026-03-29T01:00:00Z', false, 'the clock shows 03:00'],
      ['02:30', '06:00', '2026-03-29T00:59:59Z', false, 'not begun'],
      ['02:30', '06:00', '2026-03-29T01:00:00Z', true, 'begins when the hour has been skipped'],
      ['02:15', '02:45', '2026-03-29T01:00:00Z', false, 'there is no such time that day'],
    ],
  },
  {
    zone: 'Pacific/Apia',
    why: 'after 2011-12-29 comes 2011-12-31, at 10:00 UTC on the 30th',
    rows: [
      ['22:00', '06:30', '2011-12-30T07:59:59Z', false, '21:59:59 on the 29th'],
      ['22:00', '06:30', '2011-12-30T08:00:00Z', true, '22:00 on the 29th'],
      ['22:00', '06:30', '2011-12-30T09:59:59Z', true, 'to the last second of the 29th'],
      ['22:00', '06:30', '2011-12-30T10:00:00Z', true, '00:00 on the 31st is the same night'],
      ['22:00', '06:30', '2011-12-30T16:29:59Z', true, '06:29:59 on the 31st'],
      ['22:00', '06:30', '2011-12-30T16:30:00Z', false, '06:30 on the 31st'],
      ['22:00', '00:00', '2011-12-30T09:59:59Z', true, 'until midnight, which begins the 31st'],
      ['22:00', '00:00', '2011-12-30T10:00:00Z', false, 'midnight'],
      ['12:00', '13:00', '2011-12-29T22:59:59Z', true, '12:59:59 on the 29th'],
      ['12:00', '13:00', '2011-12-30T10:00:00Z', false, 'there is no noon between'],
      ['12:00', '13:00', '2011-12-30T22:00:00Z', true, '12:00 on the 31st'],
      ['22:00', '06:30', '2011-12-31T08:00:00Z', true, '22:00 on the 31st, as ever'],
      ['22:00', '06:30', '2011-12-31T16:30:00Z', false, '06:30 on the 1st, as ever'],
    ],
  },
  {
    zone: 'Pacific/Kwajalein',
    why: 'after 1993-08-20 comes 1993-08-22, at 12:00 UTC on the 21st',
    rows: [
      ['22:00', '06:30', '1993-08-21T11:59:59Z', true, '23:59:59 on the 20th'],
      ['22:00', '06:30', '1993-08-21T12:00:00Z', true, '00:00 on the 22nd'],
      ['22:00', '06:30', '1993-08-21T18:29:59Z', true, '06:29:59 on the 22nd'],
      ['22:00', '06:30', '1993-08-21T18:30:00Z', false, '06:30 on the 22nd'],
    ],
  },
];
describe.each(nights)('where the clock of $zone is moved ($why)', ({ zone, rows }) => {
  it.each(rows)('quiet from %s to %s at %s is %s: %s', (quietFrom, quietTo, at, quiet) => {
    expect(isQuiet({ quietFrom, quietTo }, zone, Date.parse(at))).toBe(quiet);
  });
});
