// The quality flags of a reading in words (flag values: IOOS QARTOD manuals).
import { expect, test } from 'vitest';
import { qualityWords } from '../../web/probe-quality.ts';

const reading = (temperatureFlag: number, humidityFlag: number) => ({
  ...{ at: '2026-03-02T07:00:00Z', temperature: 21, humidity: 95, temperatureFlag, humidityFlag },
});

test.each([
  [1, 1, 'readings pass the tests'],
  [1, 3, 'Humidity suspect: shown, not used for alarms'],
  [4, 1, 'Temperature fails the tests: not used'],
  [4, 9, 'Temperature fails the tests: not used; Humidity not sent'],
  [2, 1, 'Temperature not tested'],
])('temperature flag %i and humidity flag %i: %s', (temperature, humidity, said) => {
  expect(qualityWords(reading(temperature, humidity))).toBe(said);
});
