// What is wrong with a calibration before it is kept: corrections no working probe needs, and points that give no line.
// The bounds are ours, for capacitive probes: one that needs more is broken, or its calibration went wrong.
import type { Fault } from '../problem.ts';
import { type Calibration, gainOf, type HumidityPoint } from './calibration.ts';

const LARGEST = { temperature: 3, humidity: 10 } as const;
const LEAST_GAIN = 0.8;
const GREATEST_GAIN = 1.2;
/** Two points nearer than this make a slope out of the probe's noise, %RH. */
const LEAST_APART = 5;

const unitOf = { temperature: '°C', humidity: '%RH' } as const;
const REPLACE = 'check the figures, and replace the probe if they are right';

/** Every fault of one entry, with its place as a JSON Pointer; none = it can be kept. */
export function calibrationFaults(entry: Calibration): Fault[] {
  const temperature = entry.temperature === undefined ? [] : offsetFaults('temperature', entry.temperature.offset);
  if (entry.kind === 'two-point') return [...temperature, ...pointFaults(entry.humidity)];
  if (entry.humidity !== undefined) return [...temperature, ...offsetFaults('humidity', entry.humidity.offset)];
  if (entry.temperature === undefined)
    return [fault('', 'Nothing is corrected; give an offset of temperature or humidity.')];
  return temperature;
}

function offsetFaults(quantity: 'temperature' | 'humidity', offset: number): Fault[] {
  const largest = LARGEST[quantity];
  if (Math.abs(offset) <= largest) return [];
  const reason = `An offset of more than ${largest} ${unitOf[quantity]} is not a calibration; ${REPLACE}.`;
  return [fault(`/${quantity}/offset`, reason)];
}

function pointFaults(points: readonly [HumidityPoint, HumidityPoint]): Fault[] {
  const own = points.flatMap((point, index) => onePointFaults(point, `/humidity/${index}`));
  return own.length > 0 ? own : lineFaults(points);
}

function onePointFaults({ reference, measured }: HumidityPoint, where: string): Fault[] {
  if (!(reference >= 0 && reference <= 100))
    return [fault(`${where}/reference`, 'A reference is air of 0 to 100 %RH.')];
  if (Math.abs(reference - measured) <= LARGEST.humidity) return [];
  const reason = `The probe is more than ${LARGEST.humidity} %RH off here; ${REPLACE}.`;
  return [fault(`${where}/measured`, reason)];
}

function lineFaults(points: readonly [HumidityPoint, HumidityPoint]): Fault[] {
  const [one, other] = points;
  const apart = Math.min(Math.abs(one.reference - other.reference), Math.abs(one.measured - other.measured));
  if (apart < LEAST_APART) {
    const reason = `The two points are the same, or less than ${LEAST_APART} %RH apart; take salts further apart, or one offset.`;
    return [fault('/humidity', reason)];
  }
  const gain = gainOf(points);
  if (gain >= LEAST_GAIN && gain <= GREATEST_GAIN) return [];
  const reason = `These points give a gain of ${gain.toFixed(2)}, and ${LEAST_GAIN} to ${GREATEST_GAIN} is possible; ${REPLACE}.`;
  return [fault('/humidity', reason)];
}

function fault(where: string, reason: string): Fault {
  return { where, reason };
}
