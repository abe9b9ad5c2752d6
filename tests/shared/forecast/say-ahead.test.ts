// A forecast in words.

import { describe, expect, it } from 'vitest';
import { sayAhead } from '../../../shared/forecast/say-ahead.ts';
import { plainEnglish } from '../../../shared/plain-english.ts';

const cases: readonly [string, Parameters<typeof sayAhead>[1], string][] = [
  ['a time with its interval', { minutes: 12.2, low: 8.4, high: 20 }, 'reaches 28 °C in about 12 min (8–20)'],
  ['an interval without an end', { minutes: 12, low: 8, high: null }, 'reaches 28 °C in about 12 min (8 or more)'],
  ['no interval', { minutes: 3, low: null, high: null }, 'reaches 28 °C in about 3 min'],
  ['half a minute is one', { minutes: 0.5, low: 0.1, high: 2 }, 'reaches 28 °C in about 1 min (0–2)'],
  ['less is any minute', { minutes: 0.49, low: 0, high: 2 }, 'reaches 28 °C any minute'],
  ['so is a time that has passed', { minutes: -4, low: -6, high: 3 }, 'reaches 28 °C any minute'],
  ['an interval that has begun', { minutes: 2, low: -1, high: 5 }, 'reaches 28 °C in about 2 min (0–5)'],
];

describe('sayAhead', () => {
  it.each(cases)('%s', (_, ahead, sentence) => {
    expect(sayAhead('28 °C', ahead, plainEnglish)).toBe(sentence);
  });
});
