// What admission makes of a message on somebody else's topic, read by a mapping from the settings. It never throws.
import { celsiusFromFahrenheit } from '../units.ts';
import { admitSamples, type Sample } from './admit-samples.ts';
import { asNumber, describeValue, quoteText } from './json-object.ts';
import { resolvePointer } from './json-pointer.ts';
import { parsePayload } from './parse-payload.ts';
import { percentFromRatio } from './percent-from-ratio.ts';
import { findNodeNameFault } from './probe-name.ts';
import { readTimeMs } from './read-time.ts';
import type { Admission, Refusal } from './reading.ts';
import { because } from './reason.ts';
import { nodeLevel, type TopicMapping } from './topic-mapping.ts';

interface MappedMessage {
  readonly topic: string;
  readonly payload: Uint8Array;
  /** When the message came in, ms since the epoch: the time of a reading that carries none. */
  readonly arrivalMs: number;
}

/**
 * Reads one reading from a JSON message by a mapping whose filter takes in its topic. A pointer that leads nowhere, or to
 * null, is an absent value: a reading needs temperature or humidity, and without a time the arrival is taken.
 */
export function decodeMapped(mapping: TopicMapping, message: MappedMessage): Admission {
  const node = readNode(mapping.node, message.topic);
  if (typeof node !== 'string') return { admitted: [], refused: [node] };
  const parsed = parsePayload(message.payload);
  if ('refusal' in parsed) return { admitted: [], refused: [parsed.refusal] };
  const item = readSample(mapping, parsed.value, message.arrivalMs);
  const arrival = { node, arrivalMs: message.arrivalMs };
  return admitSamples([item], arrival, (_, part) => mapping[part]?.pointer ?? '');
}

function readNode(node: string, topic: string): string | Refusal {
  const level = nodeLevel(node);
  if (level === null) return node;
  const name = topic.split('/')[level];
  if (name === undefined) return { reason: because('noTopicLevel', level), where: '' };
  const fault = findNodeNameFault(name);
  return fault === null ? name : { reason: because('nodeName', quoteText(name), fault), where: '' };
}

function readSample(mapping: TopicMapping, document: unknown, arrivalMs: number): Sample | Refusal {
  const temperature = readMapped(document, 'mappedTemperature', mapping.temperature?.pointer);
  if (isRefusal(temperature)) return temperature;
  const humidity = readMapped(document, 'mappedHumidity', mapping.humidity?.pointer);
  if (isRefusal(humidity)) return humidity;
  if (temperature === null && humidity === null) return { reason: because('mappedNothing'), where: '' };
  const timeMs = readTime(mapping.time, document, arrivalMs);
  if (isRefusal(timeMs)) return timeMs;
  const inCelsius = mapping.temperature?.unit === 'degF' ? celsiusFromFahrenheit : same;
  const inPercent = mapping.humidity?.unit === '/' ? percentFromRatio : same;
  return {
    where: '',
    probe: mapping.probe ?? '',
    timeMs,
    temperature: temperature === null ? null : inCelsius(temperature),
    humidity: humidity === null ? null : inPercent(humidity),
  };
}

function isRefusal(value: number | null | Refusal): value is Refusal {
  return typeof value === 'object' && value !== null;
}

function same(value: number): number {
  return value;
}

/** `wrong` is what it is when it is no number. */
function readMapped(
  document: unknown,
  wrong: 'mappedTemperature' | 'mappedHumidity',
  pointer: string | undefined,
): number | null | Refusal {
  const value = pointer === undefined ? null : (resolvePointer(document, pointer) ?? null);
  if (value === null) return null;
  return asNumber(value) ?? { reason: because(wrong, describeValue(value)), where: pointer ?? '' };
}

function readTime(time: TopicMapping['time'], document: unknown, arrivalMs: number): number | Refusal {
  const value = time === undefined ? null : (resolvePointer(document, time.pointer) ?? null);
  if (time === undefined || value === null) return arrivalMs;
  const timeMs = readTimeMs(value, time.unit);
  if (typeof timeMs === 'number') return timeMs;
  // A mapping that expects text takes no number, as the plain form does.
  const reason = time.unit === 'rfc3339' ? because('mappedTimeNoText', describeValue(value)) : timeMs;
  return { reason, where: time.pointer };
}
