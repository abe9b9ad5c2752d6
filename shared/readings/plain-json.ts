// The plain form of a payload: one object, or a list of them, with temperature (°C), humidity (%RH), time and probe.
// It guesses no unit and mends no value; other fields are ignored, except one that says Fahrenheit.
import type { Sample, SamplePart } from './admit-samples.ts';
import { asNumber, asText, describeValue, isJsonObject, type JsonObject, quoteText } from './json-object.ts';
import { pointerToken } from './json-pointer.ts';
import { findProbeNameFault } from './probe-name.ts';
import { readTimeMs } from './read-time.ts';
import type { Refusal } from './reading.ts';
import { because, type Reason } from './reason.ts';

const MAX_READINGS = 10_000;

/**
 * Reads a parsed payload in the plain form. A faulty element of a list is refused whole, the others stand.
 * `null` is the same as an absent field; without a time, the arrival (ms since the epoch) is taken.
 */
export function readPlainJson(value: unknown, arrivalMs: number): readonly (Sample | Refusal)[] {
  if (!Array.isArray(value)) return [readElement(value, '', arrivalMs)];
  if (value.length === 0) return [{ reason: because('listEmpty'), where: '' }];
  if (value.length > MAX_READINGS) return [{ reason: because('listTooLong', value.length), where: '' }];
  return value.map((element, index) => readElement(element, `/${index}`, arrivalMs));
}

/** The JSON Pointer of a part of a sample that came in the plain form. */
export function placeInPlainJson(sample: Sample, part: SamplePart): string {
  return `${sample.where}/${part}`;
}

function readElement(element: unknown, where: string, arrivalMs: number): Sample | Refusal {
  if (!isJsonObject(element)) return { reason: because('readingNoObject', describeValue(element)), where };
  const fahrenheit = findFahrenheit(element, where);
  if (fahrenheit !== null) return fahrenheit;
  const temperature = readNumber(element, 'temperature', where);
  if (isRefusal(temperature)) return temperature;
  const humidity = readNumber(element, 'humidity', where);
  if (isRefusal(humidity)) return humidity;
  if (temperature === null && humidity === null) return { reason: describeNeither(element), where };
  const { probe: probeField, time } = element;
  const probe = readProbe(probeField, where);
  if (isRefusal(probe)) return probe;
  const timeMs = readTime(time, arrivalMs);
  if (typeof timeMs === 'object') return { reason: timeMs, where: `${where}/time` };
  return { where, probe, timeMs, temperature, humidity };
}

function isRefusal(value: number | string | null | Refusal): value is Refusal {
  return typeof value === 'object' && value !== null;
}

const noNumber = { temperature: 'temperatureNoNumber', humidity: 'humidityNoNumber' } as const;

function readNumber(element: JsonObject, field: 'temperature' | 'humidity', where: string): number | null | Refusal {
  const value = element[field] ?? null;
  if (value === null) return null;
  return asNumber(value) ?? { reason: because(noNumber[field], describeValue(value)), where: `${where}/${field}` };
}

function readProbe(value: unknown, where: string): string | Refusal {
  const probe = asText(value ?? '');
  if (probe === '') return probe;
  const place = `${where}/probe`;
  if (probe === null) return { reason: because('probeNoText', describeValue(value)), where: place };
  const fault = findProbeNameFault(probe);
  return fault === null ? probe : { reason: because('probeName', quoteText(probe), fault), where: place };
}

function readTime(value: unknown, arrivalMs: number): number | Reason {
  if (value === undefined || value === null) return arrivalMs;
  return readTimeMs(value, typeof value === 'number' ? 's' : 'rfc3339');
}

const unitField = /unit|scale/i;
const fahrenheitWord = /^(?:°|deg(?:rees)?[ _]?)?f(?:ahrenheit)?$/i;

/** A field such as `unit` or `temperature_unit` that says °F: its temperature must not be taken for °C. */
function findFahrenheit(element: JsonObject, where: string): Refusal | null {
  for (const [field, value] of Object.entries(element)) {
    if (typeof value !== 'string' || !unitField.test(field) || !fahrenheitWord.test(value.trim())) continue;
    return { reason: because('saysFahrenheit', quoteText(field)), where: `${where}/${pointerToken(field)}` };
  }
  return null;
}

function describeNeither(element: JsonObject): Reason {
  return because('bn' in element || 'n' in element ? 'senmlWithoutList' : 'neitherValue');
}
