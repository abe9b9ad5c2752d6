// How old a page is said to be after the connection was lost.
import { expect, test } from 'vitest';
import { lostWords } from '../../web/lost-words.ts';

const heard = Date.parse('2026-03-02T10:00:00Z');

test.each([
  [-4_000, 'from 11:00, less than a minute old', 'a clock that lags'],
  [0, 'from 11:00, less than a minute old', 'never "0 s old"'],
  [59_999, 'from 11:00, less than a minute old', 'just below a minute'],
  [60_000, 'from 11:00, 1 min old', 'a minute'],
  [2 * 3_600_000, 'from 11:00, 2 h old', 'hours'],
])('%i ms after the last word: "%s" (%s)', (ageMs, said) => {
  expect(lostWords(heard, heard + ageMs, 'Europe/Amsterdam')).toContain(said);
});
