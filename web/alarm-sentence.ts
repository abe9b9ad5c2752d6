// The service's sentence about an alarm as this page shows it: without its shape, since the page draws its own, and in the site’s unit.
import type { AlarmView } from '../shared/api/alarms.ts';
import { temperatureLimitText, withTemperature } from './quantities.ts';
import { temperatureUnit } from './temperature-unit.ts';

const shapeAtStart = /^[▲▼△▽□■○●◇◆◐↑…‖?\s]+/u;
const celsius = /(-?\d+(?:\.\d+)?)\s°C/g;
const numberAndUnit = /(\d) (°C|%|min|h)(?!\w)/g;
const bareLimit = /\b(limit|above|below) (-?\d+(?:\.\d+)?)/g;

const temperatureRules: ReadonlySet<string> = new Set<AlarmView['rule']>(['heat', 'cold', 'heat-ahead']);

/** True for alarms about temperature: their numbers are °C. */
export function isAboutTemperature(rule: string): boolean {
  return temperatureRules.has(rule);
}

/** What the alarm says. The service speaks °C only; a site that is set to °F reads the same numbers in °F. */
export function alarmSentence({ rule, sentence }: Pick<AlarmView, 'rule' | 'sentence'>): string {
  const said = sentence.replace(shapeAtStart, '').replace(numberAndUnit, '$1\u00a0$2');
  if (temperatureUnit.value === '°C' || !isAboutTemperature(rule)) return said;
  return said
    .replace(celsius, (_, value: string) => withTemperature(Number(value)))
    .replace(bareLimit, (_, word: string, value: string) => `${word} ${temperatureLimitText(Number(value))}`);
}
