// How values are written, in the unit the site is set to.
import { afterEach, describe, expect, test } from 'vitest';
import {
  humidityLimitText,
  temperatureDifferenceText,
  temperatureLimitText,
  temperatureText,
  withTemperature,
} from '../../web/quantities.ts';
import { celsiusOf, differenceInUnit, inUnit, temperatureUnit } from '../../web/temperature-unit.ts';
import { spaced } from './plain-text.ts';

afterEach(() => {
  temperatureUnit.value = '°C';
});

describe.each([
  ['°C', '21.4', '21.4 °C', '28', '28.5', '2'],
  ['°F', '70.5', '70.5 °F', '82.4', '83.3', '3.6'],
] as const)('in %s', (unit, value, valueWithUnit, limit, halfLimit, difference) => {
  test('a temperature has one digit', () => {
    temperatureUnit.value = unit;
    expect(temperatureText(21.4)).toBe(value);
    expect(spaced(withTemperature(21.4))).toBe(valueWithUnit);
  });
  test('a limit has no needless digit', () => {
    temperatureUnit.value = unit;
    expect(temperatureLimitText(28)).toBe(limit);
    expect(temperatureLimitText(28.5)).toBe(halfLimit);
  });
  test('a difference is scaled and not shifted, up or down', () => {
    temperatureUnit.value = unit;
    expect(temperatureDifferenceText(2)).toBe(difference);
    expect(temperatureDifferenceText(-2)).toBe(difference);
    expect(temperatureDifferenceText(0)).toBe('0');
  });
  test('humidity is what it was', () => {
    temperatureUnit.value = unit;
    expect(humidityLimitText(92.5)).toBe('92.5');
  });
  test('a missing value is a dash', () => {
    temperatureUnit.value = unit;
    expect([temperatureText(null), temperatureLimitText(null), withTemperature(null)]).toEqual(['–', '–', '–']);
  });
});

test('a number and its unit are never broken over two lines', () => {
  expect(withTemperature(21.4)).toBe('21.4\u00a0°C');
});

describe('the two scales', () => {
  test.each([
    [0, 32, 'ice'],
    [100, 212, 'steam'],
    [-40, -40, 'where they meet'],
  ])('%d °C is %d °F (%s)', (celsius, fahrenheit) => {
    expect(inUnit(celsius, '°F')).toBeCloseTo(fahrenheit, 10);
    expect(celsiusOf(fahrenheit, '°F')).toBeCloseTo(celsius, 10);
  });
  test('a difference of 5 °C is one of 9 °F, and none is none', () => {
    expect(differenceInUnit(5, '°F')).toBeCloseTo(9, 10);
    expect(differenceInUnit(0, '°F')).toBe(0);
  });
});
