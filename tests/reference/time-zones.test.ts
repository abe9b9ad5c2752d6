// Times of day across real shifts of civil time. The instants of the shifts are those of the tz database (files europe, northamerica,
// australasia, asia), written here from memory: EU 01:00 UTC on the last Sundays of March and October; US 02:00 local on the second Sunday of
// March and the first of November; Lord Howe half an hour at 02:00 local on the first Sundays of October and April; Nepal +05:45, no shifts.
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { firstTimeOfDayAtOrAfter, planStages, validZone } from '../../shared/healing/batch-clock.ts';
import { DAY_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import { morningProfile, timesOf } from '../shared/healing/sample-plan.ts';

const first = (from: string, timeOfDay: string, zone: string) =>
  utcText(firstTimeOfDayAtOrAfter(Date.parse(from), timeOfDay, zone));

describe('the first time of day at or after an instant', () => {
  const rows: { why: string; zone: string; from: string; time: string; is: string }[] = [
    {
      why: 'is the instant itself',
      zone: 'UTC',
      from: '2026-03-02T07:00:00Z',
      time: '07:00',
      is: '2026-03-02T07:00:00Z',
    },
    {
      why: 'a moment too late is the next day',
      zone: 'UTC',
      from: '2026-03-02T07:00:00.001Z',
      time: '07:00',
      is: '2026-03-03T07:00:00Z',
    },
    {
      why: 'counts in local time',
      zone: 'Asia/Kathmandu',
      from: '2026-03-02T00:00:00Z',
      time: '07:00',
      is: '2026-03-02T01:15:00Z',
    },
    {
      why: 'is the day before in UTC where the zone is far ahead',
      zone: 'Asia/Kathmandu',
      from: '2026-03-02T12:00:00Z',
      time: '00:15',
      is: '2026-03-02T18:30:00Z',
    },
    {
      why: 'in Amsterdam is 23 h later over the spring shift',
      zone: 'Europe/Amsterdam',
      from: '2026-03-28T06:00:01Z',
      time: '07:00',
      is: '2026-03-29T05:00:00Z',
    },
    {
      why: 'in Amsterdam is 25 h later over the autumn shift',
      zone: 'Europe/Amsterdam',
      from: '2026-10-24T05:00:01Z',
      time: '07:00',
      is: '2026-10-25T06:00:00Z',
    },
    {
      why: 'left out in Amsterdam is the end of the gap',
      zone: 'Europe/Amsterdam',
      from: '2026-03-28T12:00:00Z',
      time: '02:30',
      is: '2026-03-29T01:00:00Z',
    },
    {
      why: 'left out is the end of the gap also when asked for then',
      zone: 'Europe/Amsterdam',
      from: '2026-03-29T01:00:00Z',
      time: '02:30',
      is: '2026-03-29T01:00:00Z',
    },
    {
      why: 'left out is gone after the gap',
      zone: 'Europe/Amsterdam',
      from: '2026-03-29T01:00:00.001Z',
      time: '02:30',
      is: '2026-03-30T00:30:00Z',
    },
    {
      why: 'at the border of the gap is its end',
      zone: 'Europe/Amsterdam',
      from: '2026-03-28T12:00:00Z',
      time: '02:00',
      is: '2026-03-29T01:00:00Z',
    },
    {
      why: 'repeated in Amsterdam is the earlier',
      zone: 'Europe/Amsterdam',
      from: '2026-10-24T12:00:00Z',
      time: '02:30',
      is: '2026-10-25T00:30:00Z',
    },
    {
      why: 'repeated is not the second either',
      zone: 'Europe/Amsterdam',
      from: '2026-10-25T00:30:00.001Z',
      time: '02:30',
      is: '2026-10-26T01:30:00Z',
    },
    {
      why: 'left out in New York is the end of the gap',
      zone: 'America/New_York',
      from: '2026-03-08T00:00:00Z',
      time: '02:15',
      is: '2026-03-08T07:00:00Z',
    },
    {
      why: 'repeated in New York is the earlier',
      zone: 'America/New_York',
      from: '2026-11-01T00:00:00Z',
      time: '01:30',
      is: '2026-11-01T05:30:00Z',
    },
    {
      why: 'left out on Lord Howe, where the gap is half an hour',
      zone: 'Australia/Lord_Howe',
      from: '2026-10-03T00:00:00Z',
      time: '02:15',
      is: '2026-10-03T15:30:00Z',
    },
    {
      why: 'after the half hour on Lord Howe',
      zone: 'Australia/Lord_Howe',
      from: '2026-10-03T00:00:00Z',
      time: '02:45',
      is: '2026-10-03T15:45:00Z',
    },
    {
      why: 'repeated on Lord Howe is the earlier',
      zone: 'Australia/Lord_Howe',
      from: '2026-04-04T00:00:00Z',
      time: '01:45',
      is: '2026-04-04T14:45:00Z',
    },
    {
      why: 'skips the day that Samoa left out',
      zone: 'Pacific/Apia',
      from: '2011-12-29T20:00:00Z',
      time: '07:00',
      is: '2011-12-30T17:00:00Z',
    },
    {
      why: 'goes over midnight with the gap of Toronto in 1919',
      zone: 'America/Toronto',
      from: '1919-03-30T12:00:00Z',
      time: '23:45',
      is: '1919-03-31T04:30:00Z',
    },
  ];
  it.each(rows)('$why', ({ zone, from, time, is }) => {
    expect(first(from, time, zone)).toBe(is);
  });

  it('refuses an unknown zone', () => {
    expect(() => firstTimeOfDayAtOrAfter(0, '07:00', 'Europe/Nowhere')).toThrow(RangeError);
  });
});

describe('a gap over midnight', () => {
  it('still counts for the day before when asked for at its end', () => {
    expect(first('1919-03-31T04:30:00Z', '23:45', 'America/Toronto')).toBe('1919-03-31T04:30:00Z');
  });
});

describe('the beginning of venting on the fifth morning', () => {
  // Closed at 15:00 local four days before a Sunday morning, or a day earlier or later: over the shift and on both sides of it.
  const rows = [
    {
      zone: 'Europe/Amsterdam',
      closed: '2026-03-23T14:00:00Z',
      venting: '2026-03-28T06:00:00Z',
      why: 'before the shift',
    },
    {
      zone: 'Europe/Amsterdam',
      closed: '2026-03-24T14:00:00Z',
      venting: '2026-03-29T05:00:00Z',
      why: 'over the spring shift',
    },
    {
      zone: 'Europe/Amsterdam',
      closed: '2026-10-20T13:00:00Z',
      venting: '2026-10-25T06:00:00Z',
      why: 'over the autumn shift',
    },
    {
      zone: 'America/New_York',
      closed: '2026-03-03T20:00:00Z',
      venting: '2026-03-08T11:00:00Z',
      why: 'over the spring shift',
    },
    {
      zone: 'America/New_York',
      closed: '2026-10-27T19:00:00Z',
      venting: '2026-11-01T12:00:00Z',
      why: 'over the autumn shift',
    },
    {
      zone: 'Australia/Lord_Howe',
      closed: '2026-09-29T04:30:00Z',
      venting: '2026-10-03T20:00:00Z',
      why: 'over the spring shift',
    },
    {
      zone: 'Australia/Lord_Howe',
      closed: '2026-03-31T04:00:00Z',
      venting: '2026-04-04T20:30:00Z',
      why: 'over the autumn shift',
    },
    {
      zone: 'Asia/Kathmandu',
      closed: '2026-03-24T09:15:00Z',
      venting: '2026-03-29T01:15:00Z',
      why: 'where there is no shift',
    },
  ];
  it.each(rows)('in $zone $why is at 07:00 local', ({ zone, closed, venting }) => {
    const spans = planStages(morningProfile(), timesOf({ zone, closedMs: Date.parse(closed) }), Date.parse(closed));
    const startMs = spans.find(({ stage }) => stage === 'venting')?.startMs ?? 0;
    expect(utcText(startMs)).toBe(venting);
    const local = Temporal.Instant.fromEpochMilliseconds(startMs).toZonedDateTimeISO(zone);
    expect(local.toPlainTime().toString()).toBe('07:00:00');
  });

  it('counts elapsed hours over a shift, so that 96 h may end too late for that morning', () => {
    // Closed 06:30 local; over the spring shift 96 h end at 07:30 local, half an hour too late for that morning.
    const closedMs = Date.parse('2026-03-25T05:30:00Z');
    const spans = planStages(morningProfile(), timesOf({ zone: 'Europe/Amsterdam', closedMs }), closedMs);
    expect(utcText(spans[1]?.startMs ?? 0)).toBe('2026-03-30T05:00:00Z');
  });
});

describe('any time of day around any shift', () => {
  const shifts = [
    { zone: 'Europe/Amsterdam', atMs: Date.parse('2026-03-29T01:00:00Z') },
    { zone: 'Europe/Amsterdam', atMs: Date.parse('2026-10-25T01:00:00Z') },
    { zone: 'America/New_York', atMs: Date.parse('2026-03-08T07:00:00Z') },
    { zone: 'America/New_York', atMs: Date.parse('2026-11-01T06:00:00Z') },
    { zone: 'Australia/Lord_Howe', atMs: Date.parse('2026-10-03T15:30:00Z') },
    { zone: 'Australia/Lord_Howe', atMs: Date.parse('2026-04-04T15:00:00Z') },
  ];

  it('the polyfill knows these shifts', () => {
    for (const { zone, atMs } of shifts) {
      const before = Temporal.Instant.fromEpochMilliseconds(atMs - 1).toZonedDateTimeISO(zone);
      expect(before.getTimeZoneTransition('next')?.epochMilliseconds).toBe(atMs);
    }
  });

  it('is what one finds by walking through the days minute by minute', () => {
    const walks = shifts.map((shift) => ({ ...shift, walk: walkMinutes(shift.atMs, shift.zone) }));
    const aboutAnHour = fc.constantFrom(1, 2, 3, 7, 23, 0);
    fc.assert(
      fc.property(
        fc.constantFrom(...walks),
        fc.integer({ min: -DAY_MS, max: DAY_MS }),
        aboutAnHour,
        fc.integer({ min: 0, max: 59 }),
        ({ zone, atMs, walk }, awayMs, hour, minute) => {
          const time = `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
          expect(firstTimeOfDayAtOrAfter(atMs + awayMs, time, zone)).toBe(firstByWalking(walk, atMs + awayMs, time));
        },
      ),
      { numRuns: 500 },
    );
  });
});

interface Minute {
  readonly atMs: number;
  readonly date: string;
  readonly time: string;
}

/** Every minute of three days on either side of an instant with its local date and time, by the polyfill's zone data. */
function walkMinutes(aroundMs: number, zone: string): Minute[] {
  return Array.from({ length: (6 * DAY_MS) / MINUTE_MS }, (_, i) => {
    const atMs = aroundMs - 3 * DAY_MS + i * MINUTE_MS;
    const local = Temporal.Instant.fromEpochMilliseconds(atMs).toZonedDateTimeISO(zone).toString();
    return { atMs, date: local.slice(0, 10), time: local.slice(11, 16) };
  });
}

/** On each day the time comes with the first minute that shows it or a later one. */
function firstByWalking(walk: readonly Minute[], fromMs: number, time: string): number | undefined {
  const firstOfDay = new Map<string, number>();
  for (const minute of walk) {
    if (minute.time >= time && !firstOfDay.has(minute.date)) firstOfDay.set(minute.date, minute.atMs);
  }
  return [...firstOfDay.values()].slice(1).find((atMs) => atMs >= fromMs);
}

describe('a valid zone', () => {
  const rows = [
    { zone: 'Europe/Amsterdam', valid: true, why: 'a name of the database' },
    { zone: 'UTC', valid: true, why: 'the zone of the machine in many places' },
    { zone: 'Australia/Lord_Howe', valid: true, why: 'a name with an underscore' },
    { zone: '+02:00', valid: false, why: 'an offset knows no shifts' },
    { zone: 'Europe/Nowhere', valid: false, why: 'not in the database' },
    { zone: '', valid: false, why: 'nothing' },
    { zone: '2026-03-02T00:00[Europe/Amsterdam]', valid: false, why: 'an instant with a zone is no zone' },
  ];
  it.each(rows)('"$zone": $valid ($why)', ({ zone, valid }) => {
    expect(validZone(zone)).toBe(valid);
  });
});
