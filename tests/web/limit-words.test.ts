// A limit of a plan as its editor speaks it.
import { beforeEach, describe, expect, it } from 'vitest';
import type { Limit } from '../../shared/healing/profile.ts';
import { speakLate } from '../../web/late-strings.ts';
import { spokenLimit } from '../../web/limit-words.ts';
import { speak } from '../../web/strings.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';
import { english } from '../support/page-words.ts';

beforeEach(() => {
  speak(english);
  speakLate(english);
  temperatureUnit.value = '°C';
});

const basis = 'ours';
const house = (houseOffset: number, fallback: number) => ({ houseOffset, fallback });

const rows: readonly (readonly [spoken: string, why: string, limit: Limit])[] = [
  ['stays at 92.5', 'one number', { shape: 'constant', value: 92.5, basis }],
  ['evenly from 95 to 80', 'two ends', { shape: 'ramp', from: 95, to: 80, basis }],
  [
    '4 steps from 100 to house level +15 (else 80)',
    'an end above house level',
    { shape: 'stairs', from: 100, to: house(15, 80), steps: 4, basis },
  ],
  ['one step from 90 to 80', 'a single step', { shape: 'stairs', from: 90, to: 80, steps: 1, basis }],
  [
    'one after another: 92, 90, house level (else 55)',
    'a level for each part',
    { shape: 'levels', values: [92, 90, house(0, 55)], basis },
  ],
  ['follows house level −20 (else 45)', 'house air moves', { shape: 'levels', values: [house(-20, 45)], basis }],
  ['stays at 45', 'one level is one number', { shape: 'levels', values: [45], basis }],
  [
    '– steps from – to house level – (else –)',
    'numbers that are being written',
    {
      ...{ shape: 'stairs', from: Number.NaN, steps: Number.NaN, basis },
      to: house(Number.NaN, Number.NaN),
    },
  ],
];

describe('a limit', () => {
  it.each(rows)('is spoken as "%s": %s', (spoken, _, limit) => {
    expect(spokenLimit(limit, 'humidity')).toBe(spoken);
  });

  it('is in the unit of the site', () => {
    temperatureUnit.value = '°F';
    const limit: Limit = { shape: 'ramp', from: 20, to: house(-5, 15), basis };
    expect(spokenLimit(limit, 'temperature')).toBe('evenly from 68 to house level −9 (else 59)');
  });
});
