// How a value is written for people. Missing values are a dash, never a zero.
import { words } from './strings.ts';

/** "21.4", "–". */
export function temperatureText(value: number | null): string {
  return value === null ? words.units.none : value.toFixed(1);
}

/** Whole percent: the sensors are no better than ± 1–2 %RH. */
export function humidityText(value: number | null): string {
  return value === null ? words.units.none : value.toFixed(0);
}

/** "0.23". */
export function vpdText(value: number | null): string {
  return value === null ? words.units.none : value.toFixed(2);
}

/** A limit without needless digits: "28", "28.5". */
export function limitText(value: number | null): string {
  return value === null ? words.units.none : String(Math.round(value * 10) / 10);
}

/** "21.4 °C". */
export function withCelsius(value: number | null): string {
  return value === null ? words.units.none : `${temperatureText(value)} ${words.units.celsius}`;
}

/** "94 %RH". */
export function withHumidity(value: number | null): string {
  return value === null ? words.units.none : `${humidityText(value)} ${words.units.humidity}`;
}

/** Share of plants taken in percent with one digit; null when it was not counted. */
export function takePercent(taken: number | null, plants: number): string | null {
  return taken === null || plants === 0 ? null : ((taken / plants) * 100).toFixed(1);
}
