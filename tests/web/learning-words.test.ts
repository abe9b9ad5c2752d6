import { afterEach, describe, expect, it } from 'vitest';
import type { LearnedAssociation } from '../../shared/api/learning.ts';
import { exposureNames } from '../../shared/learning/batch-exposures.ts';
import { associationSentences, exposureColumns, exposureWords, takeWords } from '../../web/pages/learning-words.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';

afterEach(() => {
  temperatureUnit.value = '°C';
});

const association = (given: Partial<LearnedAssociation>): LearnedAssociation => ({
  ...{ exposure: 'highest-temperature', batches: 6, tau: 1, p: 0.01, adjustedP: 0.05, strength: 'perhaps' },
  pairs: { concordant: 15, discordant: 0, tied: 0 },
  ...given,
});

describe('take and exposure in words', () => {
  it('take carries its interval', () => {
    expect(takeWords({ share: 0.95, low: 0.9346, high: 0.9618 })).toBe('95.0 % (93.5–96.2)');
  });

  it.each([
    [null, 'not known'],
    [undefined, 'not known'],
    [0, '0.0'],
    [0.04, '0.0'],
    [99.94, '99.9'],
    [100, '100'],
    [123.6, '124'],
  ])('an exposure of %s is “%s”', (value, says) => {
    expect(exposureWords('vpd-hours-first-three-days', value)).toBe(says);
  });

  it.each([
    ['°C', 'degree-hours-above-28', 'Degree-hours above 28 °C', '10.0'],
    ['°F', 'degree-hours-above-28', 'Degree-hours above 82.4 °F', '18.0'],
    ['°F', 'highest-temperature', 'Highest °F', '50.0'],
    ['°F', 'mean-temperature', 'Mean °F', '50.0'],
    ['°F', 'vpd-hours-first-three-days', 'VPD-hours, days 1–3 (kPa·h)', '10.0'],
  ] as const)('who reads %s has %s as “%s”, and ten of it as %s', (unit, name, label, says) => {
    temperatureUnit.value = unit;
    expect(exposureColumns().find((column) => column.name === name)?.label).toBe(label);
    expect(exposureWords(name, 10)).toBe(says);
  });

  it('there is a column for every exposure that batches are compared by', () => {
    expect(exposureColumns().map(({ name }) => name)).toEqual([...exposureNames]);
  });
});

describe('what goes with lost take', () => {
  it('is said with its strength and the number of batches', () => {
    expect(associationSentences([association({})], 6)).toEqual([
      'Highest °C: perhaps. More of it went with more loss in 15 of 15 pairs of batches (6 batches).',
    ]);
  });

  it.each([
    [
      { concordant: 3, discordant: 12, tied: 0 },
      'More of it went with less loss in 12 of 15 pairs of batches (6 batches).',
    ],
    [{ concordant: 0, discordant: 0, tied: 15 }, 'In 6 batches nothing can be compared.'],
  ])('says which way it goes: %o', (pairs, says) => {
    expect(associationSentences([association({ pairs })], 6)).toEqual([`Highest °C: perhaps. ${says}`]);
  });

  it('is one sentence when there are too few batches for any', () => {
    const few = association({ strength: 'too-few' });
    expect(associationSentences([few, few], 3)).toEqual(['Too few to say anything: 3 batches so far.']);
    expect(associationSentences([], 1)).toEqual(['Too few to say anything: 1 batch so far.']);
  });

  it('is said for each when there are enough for one', () => {
    const few = association({ strength: 'too-few', exposure: 'mean-temperature' });
    expect(associationSentences([association({}), few], 6)).toHaveLength(2);
  });

  it('an exposure that this page does not know yet keeps its name', () => {
    expect(associationSentences([association({ exposure: 'new-one' })], 6)[0]).toMatch(/^new-one: perhaps/);
  });
});
