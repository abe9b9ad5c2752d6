// What is wrong with a calibration before it is kept: corrections no working probe needs, and points that give no line.
// The bounds are ours, for capacitive probes: one that needs more is broken, or its calibration went wrong.
import type { Fault } from '../problem.ts';
import type { Say } from '../words/shared-words.ts';
import { type Calibration, gainOf, type HumidityPoint } from './calibration.ts';

const LARGEST = { temperature: 3, humidity: 10 } as const;
const LEAST_GAIN = 0.8;
const GREATEST_GAIN = 1.2;
/** Two points nearer than this make a slope out of the probe's noise, %RH. */
const LEAST_APART = 5;

const unitOf = { temperature: '°C', humidity: '%RH' } as const;

/** Every fault of one entry, with its place as a JSON Pointer; none = it can be kept. */
export function calibrationFaults(entry: Calibration): Fault[] {
  const temperature = entry.temperature === undefined ? [] : offsetFaults('temperature', entry.temperature.offset);
  if (entry.kind === 'two-point') return [...temperature, ...pointFaults(entry.humidity)];
  if (entry.humidity !== undefined) return [...temperature, ...offsetFaults('humidity', entry.humidity.offset)];
  if (entry.temperature === undefined) return [fault('', ({ faults }) => faults.nothingCorrected)];
  return temperature;
}

function offsetFaults(quantity: 'temperature' | 'humidity', offset: number): Fault[] {
  const largest = LARGEST[quantity];
  if (Math.abs(offset) <= largest) return [];
  return [fault(`/${quantity}/offset`, ({ faults }) => faults.offsetTooLarge(largest, unitOf[quantity]))];
}

function pointFaults(points: readonly [HumidityPoint, HumidityPoint]): Fault[] {
  const own = points.flatMap((point, index) => onePointFaults(point, `/humidity/${index}`));
  return own.length > 0 ? own : lineFaults(points);
}

function onePointFaults({ reference, measured }: HumidityPoint, where: string): Fault[] {
  if (!(reference >= 0 && reference <= 100)) return [fault(`${where}/reference`, ({ faults }) => faults.badReference)];
  if (Math.abs(reference - measured) <= LARGEST.humidity) return [];
  return [fault(`${where}/measured`, ({ faults }) => faults.tooFarOff(LARGEST.humidity))];
}

function lineFaults(points: readonly [HumidityPoint, HumidityPoint]): Fault[] {
  const [one, other] = points;
  const apart = Math.min(Math.abs(one.reference - other.reference), Math.abs(one.measured - other.measured));
  if (apart < LEAST_APART) {
    return [fault('/humidity', ({ faults }) => faults.pointsTooNear(LEAST_APART))];
  }
  const gain = gainOf(points);
  if (gain >= LEAST_GAIN && gain <= GREATEST_GAIN) return [];
  const [found, least, greatest] = [gain.toFixed(2), String(LEAST_GAIN), String(GREATEST_GAIN)];
  return [fault('/humidity', ({ faults }) => faults.badGain(found, least, greatest))];
}

function fault(where: string, reason: Say): Fault {
  return { where, reason };
}
