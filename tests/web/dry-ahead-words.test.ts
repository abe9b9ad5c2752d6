// Dryness ahead as the page of a chamber says it, on the clock of the site.
import { describe, expect, it } from 'vitest';
import { dryAheadWords } from '../../web/dry-ahead-words.ts';

const ZONE = 'Europe/Amsterdam';
const at = '2026-03-02T13:32:00Z';
const ahead = { limit: 90, at, earliest: '2026-03-02T13:27:00Z', latest: '2026-03-02T13:45:00Z' };

describe('dryness ahead', () => {
  it('is said with its interval, as an estimate, and what to do', () => {
    expect(dryAheadWords(ahead, ZONE)).toBe(
      'Dryness ahead, an estimate: below 90 %RH between 14:27 and 14:45. Look at fogger and seams.',
    );
  });

  it('is said for a time where the interval has no end', () => {
    expect(dryAheadWords({ ...ahead, latest: null }, ZONE)).toContain('below 90 %RH at about 14:32');
  });

  it.each([
    ['nothing is expected', null],
    ['no time can be told', { ...ahead, at: null }],
  ])('is not said while %s', (_, none) => {
    expect(dryAheadWords(none, ZONE)).toBeNull();
  });
});
