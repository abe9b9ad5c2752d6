import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseRfc3339 } from '../../../shared/readings/parse-rfc3339.ts';

describe('parseRfc3339', () => {
  test('reads back every instant that is written in UTC', () => {
    const instant = fc.date({ min: new Date(0), max: new Date('2100-01-01T00:00:00Z'), noInvalidDate: true });
    fc.assert(
      fc.property(instant, (date) => {
        expect(parseRfc3339(date.toISOString())).toBe(date.getTime());
      }),
    );
  });

  test.each([
    { text: '2026-03-02T07:00:00Z', utc: '2026-03-02T07:00:00.000Z', why: 'plain' },
    { text: '2026-03-02t07:00:00z', utc: '2026-03-02T07:00:00.000Z', why: 'small letters are allowed' },
    { text: '2026-03-02 07:00:00Z', utc: '2026-03-02T07:00:00.000Z', why: 'a space may part date and time' },
    {
      text: '2026-03-02T07:00:00.1234567Z',
      utc: '2026-03-02T07:00:00.123Z',
      why: 'finer than a millisecond is rounded',
    },
    { text: '2026-03-02T07:00:00.9999Z', utc: '2026-03-02T07:00:01.000Z', why: 'rounded up over the second' },
    { text: '2026-03-02T08:30:00+01:30', utc: '2026-03-02T07:00:00.000Z', why: 'ahead of UTC' },
    { text: '2026-03-01T23:00:00-08:00', utc: '2026-03-02T07:00:00.000Z', why: 'behind UTC, over midnight' },
    { text: '2028-02-29T00:00:00Z', utc: '2028-02-29T00:00:00.000Z', why: 'a leap day' },
    { text: '2016-12-31T23:59:60Z', utc: '2017-01-01T00:00:00.000Z', why: 'a leap second' },
    { text: '2017-01-01T00:59:60+01:00', utc: '2017-01-01T00:00:00.000Z', why: 'the same leap second in another zone' },
  ])('$text: $why', ({ text, utc }) => {
    expect(parseRfc3339(text)).toBe(Date.parse(utc));
  });

  test.each([
    { text: '2026-03-02T07:00:00', why: 'no zone' },
    { text: '2026-03-02', why: 'no time' },
    { text: '2026-03-02T07:00Z', why: 'no seconds' },
    { text: '2026-02-30T07:00:00Z', why: 'no such day' },
    { text: '2027-02-29T07:00:00Z', why: 'not a leap year' },
    { text: '2026-13-01T07:00:00Z', why: 'no such month' },
    { text: '2026-00-01T07:00:00Z', why: 'months begin with 01' },
    { text: '2026-03-02T24:00:00Z', why: 'the last hour is 23' },
    { text: '2026-03-02T07:60:00Z', why: 'the last minute is 59' },
    { text: '2026-03-02T07:00:61Z', why: 'no such second' },
    { text: '2026-03-02T07:00:60Z', why: 'no leap second in the middle of a day' },
    { text: '2026-03-02T07:00:00+24:00', why: 'no such offset' },
    { text: '2026-03-02T07:00:00+01:60', why: 'no such offset minutes' },
    { text: '2026-03-02T07:00:00.Z', why: 'a point without a fraction' },
    { text: '0050-01-01T00:00:00Z', why: 'a year JavaScript would move to 1950' },
    { text: '20260302T070000Z', why: 'another ISO 8601 form' },
    { text: ' 2026-03-02T07:00:00Z', why: 'a space in front' },
    { text: '2026-03-02T07:00:00Z\n', why: 'a line end' },
    { text: 'Mon, 02 Mar 2026 07:00:00 GMT', why: 'an e-mail date' },
    { text: '', why: 'empty' },
  ])('refuses "$text": $why', ({ text }) => {
    expect(parseRfc3339(text)).toBeNull();
  });
});
