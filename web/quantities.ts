// How a value is written for people. Temperatures come in as °C and are written in the unit of the site.
// Missing values are a dash, never a zero.
import { words } from './strings.ts';
import { differenceInUnit, inUnit, temperatureUnit } from './temperature-unit.ts';

const noBreak = '\u00a0';

/** A number with that many decimals and the decimal mark of the reader: "0.23", "0,23". */
export function numberText(value: number, decimals: number): string {
  return value.toFixed(decimals).replace('.', words.shared.decimal);
}

/** A temperature without its unit: "21.4", "–". */
export function temperatureText(celsius: number | null): string {
  return celsius === null ? words.units.none : numberText(inUnit(celsius, temperatureUnit.value), 1);
}

/** Whole percent: the sensors are no better than ± 1–2 %RH. */
export function humidityText(value: number | null): string {
  return value === null ? words.units.none : value.toFixed(0);
}

/** "0.23". */
export function vpdText(value: number | null): string {
  return value === null ? words.units.none : numberText(value, 2);
}

function shortNumber(value: number): string {
  return String(Math.round(value * 10) / 10).replace('.', words.shared.decimal);
}

/** A limit of humidity without needless digits: "90", "92.5". */
export function humidityLimitText(value: number | null): string {
  return value === null ? words.units.none : shortNumber(value);
}

/** A limit of temperature without needless digits and without its unit: "28", "82.4". */
export function temperatureLimitText(celsius: number | null): string {
  return celsius === null ? words.units.none : shortNumber(inUnit(celsius, temperatureUnit.value));
}

/** The size of a difference between temperatures, without sign and unit: "2", "3.6". */
export function temperatureDifferenceText(celsius: number): string {
  return shortNumber(Math.abs(differenceInUnit(celsius, temperatureUnit.value)));
}

/** "21.4 °C", "70.5 °F", never broken over two lines. */
export function withTemperature(celsius: number | null): string {
  return celsius === null ? words.units.none : `${temperatureText(celsius)}${noBreak}${temperatureUnit.value}`;
}

/** "94 %RH", never broken over two lines. */
export function withHumidity(value: number | null): string {
  return value === null ? words.units.none : `${humidityText(value)}${noBreak}${words.units.humidity}`;
}

/** Share of plants taken in percent with one digit; null when it was not counted. */
export function takePercent(taken: number | null, plants: number): string | null {
  return taken === null || plants === 0 ? null : numberText((taken / plants) * 100, 1);
}
