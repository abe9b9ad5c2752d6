import { expect, it } from 'vitest';
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
