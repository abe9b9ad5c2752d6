// What the shown climate is worth, in the unit the site is set to.
import { afterEach, describe, expect, it } from 'vitest';
import { filmWords, uncertaintyWords } from '../../web/air-words.ts';
import { temperatureUnit } from '../../web/temperature-unit.ts';

afterEach(() => {
  temperatureUnit.value = '°C';
});

const air = { vpdKpa: 0.13, vpdKpaUncertainty: 0.06, dewPoint: 20, dewPointUncertainty: 0.5 };

describe.each([
  { unit: '°C', dew: 'dew point 20.0 ± 0.5 °C', above: '1.0 °C above', below: '1.0 °C below' },
  { unit: '°F', dew: 'dew point 68.0 ± 0.9 °F', above: '1.8 °F above', below: '1.8 °F below' },
] as const)('in $unit', ({ unit, dew, above, below }) => {
  it('the dew point is converted and its ± only scaled; VPD stays in kPa', () => {
    temperatureUnit.value = unit;
    expect(uncertaintyWords(air)).toEqual(['VPD 0.13 ± 0.06 kPa', dew]);
  });

  it.each([
    { margin: 1, expected: 'wet', says: `dew point ${above} it, by the film probe`, why: 'above the film' },
    { margin: -1, expected: 'dry', says: `dew point ${below} it, by the film probe`, why: 'below it, without a sign' },
  ] as const)('the margin of the dew point is a difference: $why', ({ margin, expected, says }) => {
    temperatureUnit.value = unit;
    expect(filmWords({ margin, expected, basis: 'film probe' })).toEqual([`Film expected ${expected}`, says]);
  });
});

describe('what is not known', () => {
  it.each(['vpdKpa', 'vpdKpaUncertainty', 'dewPoint', 'dewPointUncertainty'] as const)(
    'without %s no uncertainty is said',
    (name) => {
      expect(uncertaintyWords({ ...air, [name]: null })).toEqual([]);
    },
  );

  it('without a margin nothing is said of the film', () => {
    expect(filmWords({ margin: null, expected: 'unknown', basis: 'nothing to tell by' })).toEqual([]);
  });
});
