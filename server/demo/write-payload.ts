// Readings of a node as the payload it publishes: in plain JSON, or as a SenML pack (RFC 8428).
import type { IncomingReading } from '../../shared/readings/reading.ts';
import { SECOND_MS, utcText } from '../../shared/units.ts';

export type WritePayload = (readings: readonly IncomingReading[]) => string;

/** A list of plain objects with °C, %RH and an RFC 3339 time. */
export const writePlainJson: WritePayload = (readings) =>
  JSON.stringify(
    readings.map(({ probe, timeMs, temperature, humidity }) => ({
      probe,
      time: utcText(timeMs),
      temperature,
      humidity,
    })),
  );

/** Two records to a reading; the base fields carry the probe's address and the time. */
export const writeSenml: WritePayload = (readings) =>
  JSON.stringify(
    readings.flatMap(({ probe, timeMs, temperature, humidity }) => [
      { bn: `${probe}/`, bt: timeMs / SECOND_MS, n: 'temperature', u: 'Cel', v: temperature },
      { n: 'humidity', u: '%RH', v: humidity },
    ]),
  );
