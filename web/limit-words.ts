// Limits and moments of a profile in words. Pure.
import type { CheckPlan, Limit, LimitEnd } from '../shared/healing/profile.ts';
import { words } from './late-strings.ts';
import { humidityLimitText, temperatureDifferenceText, temperatureLimitText } from './quantities.ts';

export type Quantity = 'temperature' | 'humidity';

/** How the numbers of one quantity are written: a value, and the size of a difference. */
interface Writing {
  readonly value: (value: number) => string;
  readonly difference: (value: number) => string;
}

/** Null, which is written as a dash, for a number that is missing while a plan is written. */
const known = (value: number) => (Number.isFinite(value) ? value : null);

const writings: Record<Quantity, Writing> = {
  temperature: { value: (value) => temperatureLimitText(known(value)), difference: temperatureDifferenceText },
  humidity: {
    value: (value) => humidityLimitText(known(value)),
    difference: (value) => humidityLimitText(Math.abs(value)),
  },
};

/** "90", "90 → 55 in 4 steps", "house level −10 (else 55)". */
export function limitWords(limit: Limit, quantity: Quantity): string {
  const writing = writings[quantity];
  if (limit.shape === 'constant') return words.profiles.constant(writing.value(limit.value));
  if (limit.shape === 'levels') return words.profiles.levels(limit.values.map((end) => endWords(end, writing)));
  const from = writing.value(limit.from);
  const to = endWords(limit.to, writing);
  return limit.shape === 'ramp' ? words.profiles.ramp(from, to) : words.profiles.stairs(from, to, limit.steps);
}

/** As it is spoken: "4 steps from 90 to house level −10 (else 55)". A number that is missing is a dash. */
export function spokenLimit(limit: Limit, quantity: Quantity): string {
  const writing = writings[quantity];
  const { said } = words.editor;
  if (limit.shape === 'constant') return said.level(writing.value(limit.value));
  if (limit.shape === 'levels') {
    const values = limit.values.map((end) => endWords(end, writing)).join(', ');
    if (limit.values.length > 1) return said.levels(values);
    return typeof limit.values[0] === 'number' ? said.level(values) : said.follows(values);
  }
  const from = writing.value(limit.from);
  const to = endWords(limit.to, writing);
  return limit.shape === 'ramp' ? said.ramp(from, to) : said.stairs(humidityLimitText(known(limit.steps)), from, to);
}

function endWords(end: LimitEnd, writing: Writing): string {
  if (typeof end === 'number') return writing.value(end);
  return words.profiles.house(offsetWords(end.houseOffset, writing), writing.value(end.fallback));
}

function offsetWords(offset: number, { difference }: Writing): string {
  if (offset === 0) return '';
  if (!Number.isFinite(offset)) return words.units.none;
  return offset > 0 ? words.profiles.more(difference(offset)) : words.profiles.less(difference(offset));
}

/** "96 h after closing, not before 07:00". */
export function momentWords(afterHours: number, notBefore: string | null): string {
  return notBefore === null ? words.profiles.after(afterHours) : words.profiles.notBefore(afterHours, notBefore);
}

/** When a check is due: "24 h after closing, then every 24 h". */
export function checkTimeWords({ afterHours = 0, atStage, everyHours }: CheckPlan): string {
  const first =
    atStage === undefined
      ? words.profiles.checkAfter(afterHours)
      : words.profiles.checkAtStage(afterHours, words.stages[atStage]);
  return everyHours === undefined ? first : `${first}, ${words.profiles.checkEvery(everyHours)}`;
}
