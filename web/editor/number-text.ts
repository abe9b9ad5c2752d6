// Numbers of a draft as they are typed and shown: a temperature and the size of a step of it in the site's unit. Pure.
import { celsiusOf, differenceInUnit, inUnit, type TemperatureUnit } from '../temperature-unit.ts';

/** What a number stands for. */
export type NumberKind = 'plain' | 'temperature' | 'difference';

const toShown: Record<NumberKind, (value: number, unit: TemperatureUnit) => number> = {
  plain: (value) => value,
  temperature: inUnit,
  difference: differenceInUnit,
};
const fromShown: Record<NumberKind, (value: number, unit: TemperatureUnit) => number> = {
  plain: (value) => value,
  temperature: celsiusOf,
  difference: (value, unit) => celsiusOf(value, unit) - celsiusOf(0, unit),
};

const digits = 1000;
const rounded = (value: number) => Math.round(value * digits) / digits;

/** Empty for a number that is missing. */
export function textOfNumber(value: number, kind: NumberKind, unit: TemperatureUnit): string {
  return Number.isFinite(value) ? String(rounded(toShown[kind](value, unit))) : '';
}

/** NaN for an empty or unreadable text. A comma is read as a point. */
export function numberOfText(text: string, kind: NumberKind, unit: TemperatureUnit): number {
  const plain = text.trim().replace(',', '.');
  return plain === '' ? Number.NaN : rounded(fromShown[kind](Number(plain), unit));
}
