// The admission rules every form of payload shares: times, possible numbers, one reading to each probe and time.
// It turns away only the impossible; a plausible but broken value is admitted, and flagged by the quality tests.
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../units.ts';
import type { Admission, IncomingReading, Refusal } from './reading.ts';
import { because, type Reason } from './reason.ts';

/** What one element of a payload says, its form undone. `where` is the element's JSON Pointer. */
export interface Sample {
  readonly where: string;
  readonly probe: string;
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

export type SamplePart = 'temperature' | 'humidity' | 'time';
type PlaceOf = (sample: Sample, part: SamplePart) => string;

interface Arrival {
  readonly node: string;
  readonly arrivalMs: number;
}

/** The numbers that air can have, °C and %RH, ends included. Wet sensors read above 100 %RH, so 110 is let in. */
const possible = { temperature: { low: -60, high: 100 }, humidity: { low: 0, high: 110 } } as const;
const impossibleIs = { temperature: 'impossibleTemperature', humidity: 'impossibleHumidity' } as const;

const FARTHEST_AHEAD_MS = 5 * MINUTE_MS;

/** A node whose clock was never set counts from 1970 or 2000; nothing older than this can be a reading of ours. */
const EARLIEST_MS = Date.UTC(2010, 0, 1);

/**
 * Admits samples and passes refusals on, in the order of the message. Two samples of one probe and time become one
 * reading; a repeat changes nothing; a second, different value for the same probe and time is refused.
 * `placeOf` gives the JSON Pointer of a part of a sample.
 */
export function admitSamples(items: readonly (Sample | Refusal)[], arrival: Arrival, placeOf: PlaceOf): Admission {
  const admitted = new Map<string, IncomingReading>();
  const refused: Refusal[] = [];
  for (const item of items) {
    const checked = 'reason' in item ? item : (findFault(item, arrival.arrivalMs, placeOf) ?? item);
    if ('reason' in checked) refused.push(checked);
    else addSample(checked, arrival.node, admitted, refused);
  }
  return { admitted: [...admitted.values()], refused };
}

function addSample(sample: Sample, node: string, admitted: Map<string, IncomingReading>, refused: Refusal[]): void {
  const { probe, timeMs, temperature, humidity } = sample;
  const key = `${timeMs} ${probe}`;
  const earlier = admitted.get(key);
  if (earlier === undefined) {
    admitted.set(key, { node, probe, timeMs, temperature, humidity });
  } else if (differs(earlier.temperature, temperature) || differs(earlier.humidity, humidity)) {
    refused.push({ reason: because('otherValue'), where: sample.where });
  } else {
    const whole = { temperature: earlier.temperature ?? temperature, humidity: earlier.humidity ?? humidity };
    admitted.set(key, { ...earlier, ...whole });
  }
}

function differs(earlier: number | null, later: number | null): boolean {
  return earlier !== null && later !== null && earlier !== later;
}

function findFault(sample: Sample, arrivalMs: number, placeOf: PlaceOf): Refusal | null {
  const time = findTimeFault(sample.timeMs, arrivalMs);
  if (time !== null) return { reason: time, where: placeOf(sample, 'time') };
  for (const quantity of ['temperature', 'humidity'] as const) {
    const reason = findRangeFault(quantity, sample[quantity]);
    if (reason !== null) return { reason, where: placeOf(sample, quantity) };
  }
  return null;
}

function findRangeFault(quantity: 'temperature' | 'humidity', value: number | null): Reason | null {
  const { low, high } = possible[quantity];
  if (value === null || (value >= low && value <= high)) return null;
  // Numbers that were sent may add up to infinity, which JSON cannot keep.
  return because(impossibleIs[quantity], Number.isFinite(value) ? value : String(value), low, high);
}

function findTimeFault(timeMs: number, arrivalMs: number): Reason | null {
  const aheadMs = timeMs - arrivalMs;
  if (aheadMs > FARTHEST_AHEAD_MS) return describeAhead(aheadMs);
  // Where our own clock is not set either, the node's cannot be judged by it.
  if (timeMs >= EARLIEST_MS || arrivalMs < EARLIEST_MS) return null;
  return because('clockNeverSet');
}

function describeAhead(aheadMs: number): Reason {
  if (aheadMs > 36_500 * DAY_MS) return because('aheadCentury');
  if (aheadMs >= 2 * DAY_MS) return because('aheadDays', roundCount(aheadMs / DAY_MS));
  if (aheadMs >= HOUR_MS) return because('aheadHours', roundCount(aheadMs / HOUR_MS));
  return because('aheadMinutes', roundCount(aheadMs / MINUTE_MS));
}

function roundCount(count: number): number {
  return Number(count.toFixed(count < 10 ? 1 : 0));
}
