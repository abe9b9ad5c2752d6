// A weekly rota laid over real weeks, on both sides of both shifts of the clock, in three zones (2026, IANA time zone database).
import { describe, expect, it } from 'vitest';
import { type DutySpan, dutyGaps, dutyPeriods, onDutyAt, rotaGaps } from '../../../shared/telling/duty.ts';
import { DAY_MS, HOUR_MS, utcText } from '../../../shared/units.ts';

const ms = (text: string) => Date.parse(text);
const everyDay = (personId: string, from: string, to: string): DutySpan[] =>
  [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ personId, weekday, from, to }));
/** Days and nights, handed over at the hour that the shifts cut. */
const roundTheClock = [...everyDay('ann', '02:00', '14:00'), ...everyDay('bo', '14:00', '02:00')];

describe('the shift of the clock', () => {
  it.each([
    { zone: 'Europe/Amsterdam', day: '2026-03-29T01:00:00Z', hours: 23, why: 'forward at 02:00' },
    { zone: 'Europe/Amsterdam', day: '2026-10-25T01:00:00Z', hours: 25, why: 'back at 03:00' },
    { zone: 'America/New_York', day: '2026-03-08T07:00:00Z', hours: 23, why: 'forward at 02:00' },
    { zone: 'America/New_York', day: '2026-11-01T06:00:00Z', hours: 25, why: 'back at 02:00' },
    { zone: 'Australia/Lord_Howe', day: '2026-10-03T15:30:00Z', hours: 23.5, why: 'half an hour forward at 02:00' },
    { zone: 'Australia/Lord_Howe', day: '2026-04-04T15:00:00Z', hours: 24.5, why: 'half an hour back at 02:00' },
  ])('in $zone ($why) leaves no gap and lets nobody overlap', ({ zone, day, hours }) => {
    const around = { fromMs: ms(day) - 3 * DAY_MS, toMs: ms(day) + 3 * DAY_MS };
    expect(dutyGaps(roundTheClock, zone, around)).toEqual([]);
    const periods = dutyPeriods(roundTheClock, zone, around);
    for (const [index, { toMs }] of periods.entries()) expect(periods[index + 1]?.fromMs ?? toMs).toBe(toMs);
    const lengths = periods.map((one) => (one.toMs - one.fromMs) / HOUR_MS);
    expect(lengths.filter((length) => length !== 12)).toEqual([hours - 12]);
  });

  it.each([
    { zone: 'Europe/Amsterdam', night: '2026-03-28T21:00:00Z', hours: 7, why: 'the night that loses an hour' },
    { zone: 'Europe/Amsterdam', night: '2026-10-24T20:00:00Z', hours: 9, why: 'the night that gains one' },
    {
      zone: 'Australia/Lord_Howe',
      night: '2026-10-03T11:30:00Z',
      hours: 7.5,
      why: 'the night that loses half an hour',
    },
    {
      zone: 'Australia/Lord_Howe',
      night: '2026-04-04T11:00:00Z',
      hours: 8.5,
      why: 'the night that gains half an hour',
    },
  ])('makes a duty from 22:00 to 06:00 last $hours h in $zone: $why', ({ zone, night, hours }) => {
    const [period] = dutyPeriods(everyDay('ann', '22:00', '06:00'), zone, { fromMs: ms(night), toMs: ms(night) + 1 });
    expect(utcText(period?.fromMs ?? 0)).toBe(night);
    expect(((period?.toMs ?? 0) - ms(night)) / HOUR_MS).toBe(hours);
  });

  it('leaves out a duty that lies wholly within the hour that is skipped, and only on that day', () => {
    const spans = everyDay('ann', '02:10', '02:50');
    const week = { fromMs: ms('2026-03-27T00:00:00Z'), toMs: ms('2026-03-31T00:00:00Z') };
    expect(dutyPeriods(spans, 'Europe/Amsterdam', week).map(({ fromMs }) => utcText(fromMs))).toEqual([
      '2026-03-27T01:10:00Z',
      '2026-03-28T01:10:00Z',
      '2026-03-30T00:10:00Z',
    ]);
  });
});

describe('who is on duty', () => {
  const spans: DutySpan[] = [
    { personId: 'ann', weekday: 1, from: '08:00', to: '17:00' },
    { personId: 'bo', weekday: 1, from: '16:00', to: '20:00' },
    { personId: 'cy', weekday: 7, from: '22:00', to: '06:00' },
    { personId: 'dee', weekday: 2, from: '00:00', to: '00:00' },
  ];
  it.each([
    { at: '2026-03-02T07:59:59Z', who: [], why: 'a second before it begins' },
    { at: '2026-03-02T08:00:00Z', who: ['ann'], why: 'it begins' },
    { at: '2026-03-02T16:30:00Z', who: ['ann', 'bo'], why: 'both, who began first first' },
    { at: '2026-03-02T17:00:00Z', who: ['bo'], why: 'the end is not part of it' },
    { at: '2026-03-01T23:00:00Z', who: ['cy'], why: 'it began on Sunday' },
    { at: '2026-03-02T05:59:00Z', who: ['cy'], why: 'and goes on into Monday, through the end of the week' },
    { at: '2026-03-02T06:00:00Z', who: [], why: 'until six' },
    { at: '2026-03-03T00:00:00Z', who: ['dee'], why: 'from midnight to midnight is the whole day' },
    { at: '2026-03-03T23:59:00Z', who: ['dee'], why: 'up to its end' },
    { at: '2026-03-04T00:00:00Z', who: [], why: 'and no longer' },
  ])('at $at: $who, for $why', ({ at, who }) => {
    expect(onDutyAt(spans, 'UTC', ms(at))).toEqual(who);
  });
});

it('a night before a day that the zone left out goes on into the day after that, and the duty of the missing day does not happen', () => {
  // In Apia Thursday, 29 December 2011, was followed by Saturday.
  const spans: DutySpan[] = [
    { personId: 'thu', weekday: 4, from: '22:00', to: '06:00' },
    { personId: 'fri', weekday: 5, from: '06:00', to: '06:00' },
    { personId: 'sat', weekday: 6, from: '06:00', to: '22:00' },
  ];
  const around = { fromMs: ms('2011-12-30T08:00:00Z'), toMs: ms('2011-12-31T08:00:00Z') };
  expect(dutyPeriods(spans, 'Pacific/Apia', around)).toEqual([
    { personId: 'thu', fromMs: ms('2011-12-30T08:00:00Z'), toMs: ms('2011-12-30T16:00:00Z') },
    { personId: 'sat', fromMs: ms('2011-12-30T16:00:00Z'), toMs: ms('2011-12-31T08:00:00Z') },
  ]);
  expect(dutyGaps(spans, 'Pacific/Apia', around)).toEqual([]);
});

describe('gaps in the rota', () => {
  const week = { fromMs: ms('2026-03-02T00:00:00Z'), toMs: ms('2026-03-09T00:00:00Z') };
  const said = (gaps: readonly { fromMs: number; toMs: number }[]) =>
    gaps.map(({ fromMs, toMs }) => `${utcText(fromMs)} – ${utcText(toMs)}`);

  it('are found before they happen, cut to the stretch that is asked for', () => {
    const spans = everyDay('ann', '06:00', '22:00').filter(({ weekday }) => weekday !== 3);
    expect(said(dutyGaps(spans, 'UTC', { ...week, toMs: ms('2026-03-05T12:00:00Z') }))).toEqual([
      '2026-03-02T00:00:00Z – 2026-03-02T06:00:00Z',
      '2026-03-02T22:00:00Z – 2026-03-03T06:00:00Z',
      '2026-03-03T22:00:00Z – 2026-03-05T06:00:00Z',
    ]);
  });

  it('are none without a rota: everybody is on duty always', () => {
    expect(dutyGaps([], 'UTC', week)).toEqual([]);
    expect(rotaGaps([], () => false, 'UTC', week)).toEqual([]);
  });

  it('are none where a shorter duty lies within a longer one', () => {
    expect(dutyGaps([...everyDay('ann', '00:00', '00:00'), ...everyDay('bo', '08:00', '09:00')], 'UTC', week)).toEqual(
      [],
    );
  });

  it('are felt where nobody of those on duty can be reached, and told apart from those where nobody is', () => {
    const spans = [...everyDay('ann', '06:00', '14:00'), ...everyDay('mute', '12:00', '22:00')];
    const day = { fromMs: ms('2026-03-02T00:00:00Z'), toMs: ms('2026-03-03T00:00:00Z') };
    const gaps = rotaGaps(spans, (id) => id !== 'mute', 'UTC', day);
    expect(
      gaps.map(({ fromMs, toMs, reason }) => [utcText(fromMs).slice(11, 16), utcText(toMs).slice(11, 16), reason]),
    ).toEqual([
      ['00:00', '06:00', 'nobody'],
      ['14:00', '22:00', 'nobody-reached'],
      ['22:00', '00:00', 'nobody'],
    ]);
  });
});
