// The unit in which temperatures are shown, and what a number becomes in it. Everything else of the page stays °C.
import { signal } from '@preact/signals';
import type { Session } from '../shared/api/session.ts';
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../shared/units.ts';

export type TemperatureUnit = Session['temperatureUnit'];

/** As the site is set; °C until that is known. */
export const temperatureUnit = signal<TemperatureUnit>('°C');

/** A temperature in °C as a number in `unit`. */
export function inUnit(celsius: number, unit: TemperatureUnit): number {
  return unit === '°F' ? fahrenheitFromCelsius(celsius) : celsius;
}

/** A difference between two temperatures, °C, as a difference in `unit`: its zero stays zero. */
export function differenceInUnit(celsius: number, unit: TemperatureUnit): number {
  return inUnit(celsius, unit) - inUnit(0, unit);
}

/** A temperature in `unit` back in °C. */
export function celsiusOf(value: number, unit: TemperatureUnit): number {
  return unit === '°F' ? celsiusFromFahrenheit(value) : value;
}
