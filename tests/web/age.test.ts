// How old a value is said to be, and from when on it no longer looks fresh.
import { describe, expect, test } from 'vitest';
import { agoWords, freshWords, isOld, spanWords } from '../../web/age.ts';

const second = 1_000;
const minute = 60 * second;
const hour = 60 * minute;
const day = 24 * hour;

describe('a span is said in its largest fitting words', () => {
  test.each([
    [0, '0 s', 'nothing has passed'],
    [59_999, '59 s', 'just below a minute is not rounded up'],
    [minute, '1 min', 'a minute'],
    [hour - 1, '59 min', 'just below an hour'],
    [hour, '1 h', 'a full hour needs no minutes'],
    [2 * hour + 5 * minute, '2 h 5 min', 'hours with minutes'],
    [2 * day - 1, '47 h 59 min', 'up to two days in hours'],
    [2 * day, '2 days', 'from two days on in days'],
    [-minute, '0 s', 'a clock that runs ahead gives no negative age'],
  ])('%i ms is "%s" (%s)', (span, said) => {
    expect(spanWords(span)).toBe(said);
  });
});

test('below five seconds it is "just now", from five on it is counted', () => {
  expect(agoWords(4_999)).toBe('just now');
  expect(agoWords(5_000)).toBe('5 s ago');
});

test('a page is up to date for a pulse and a half, from then on its age is said', () => {
  expect(freshWords(29_999)).toBe('up to date');
  expect(freshWords(30_000)).toBe('as of 30 s ago');
});

describe('a value is old when it is older than its probe may be silent', () => {
  const now = Date.parse('2026-03-02T07:15:00Z');
  test.each<[string | null, boolean, string]>([
    ['2026-03-02T07:00:00Z', false, 'exactly the allowed silence'],
    ['2026-03-02T06:59:59Z', true, 'one second more'],
    ['2026-03-02T07:15:00Z', false, 'this very instant'],
    [null, true, 'never heard'],
  ])('%s -> %s (%s)', (at, old) => {
    expect(isOld(at, now, 15 * minute)).toBe(old);
  });
});
