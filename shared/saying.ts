// How something is said to one person: the words of a language and the unit of temperatures. Values come in as °C, %RH and kPa.
import { fahrenheitFromCelsius } from './units.ts';
import type { SaidWords, SharedWords } from './words/shared-words.ts';

export type TemperatureUnit = '°C' | '°F';

export interface Saying {
  readonly words: SaidWords;
  readonly temperatureUnit: TemperatureUnit;
}

/** As the service says something: with the words that the page does not carry. */
export interface ServiceSaying extends Saying {
  readonly words: SharedWords;
}

/** A number with the decimal mark of the language and exactly `digits` decimals. */
export function sayNumber(value: number, digits: number, { words }: Pick<Saying, 'words'>): string {
  return value.toFixed(digits).replace('.', words.decimal);
}

/** "28.6 °C", "83.5 °F". */
export function sayTemperature(celsius: number | null, saying: Saying): string {
  if (celsius === null) return saying.words.alarms.notKnown;
  return `${sayNumber(inUnit(celsius, saying.temperatureUnit), 1, saying)} ${saying.temperatureUnit}`;
}

/** A limit of temperature without needless digits and without unit: "28", "82.4"; "–" when there is none. */
export function sayTemperatureLimit(celsius: number | null, saying: Saying): string {
  return celsius === null ? '–' : sayShort(inUnit(celsius, saying.temperatureUnit), saying);
}

/** "21–22 °C", "70–72 °F": whole degrees. */
export function sayTemperatureRange([low, high]: readonly [number, number], unit: TemperatureUnit): string {
  const [from, to] = [low, high].map((celsius) => Math.round(inUnit(celsius, unit)));
  return `${from}–${to} ${unit}`;
}

/** "82 %". */
export function sayPercent(value: number | null, { words }: Pick<Saying, 'words'>): string {
  return value === null ? words.alarms.notKnown : `${value.toFixed(0)} %`;
}

/** "0.92 kPa": a probe does not tell finer. */
export function sayKpa(value: number | null, saying: Saying): string {
  return value === null ? saying.words.alarms.notKnown : `${sayNumber(value, 2, saying)} kPa`;
}

/** To a tenth, without needless digits: "28", "27.3"; "–" for nothing. */
export function sayShort(value: number | null, { words }: Pick<Saying, 'words'>): string {
  return value === null ? '–' : String(Math.round(value * 10) / 10).replace('.', words.decimal);
}

function inUnit(celsius: number, unit: TemperatureUnit): number {
  return unit === '°F' ? fahrenheitFromCelsius(celsius) : celsius;
}
