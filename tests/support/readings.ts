// Feeding payloads to the decoders in tests: one node, one arrival time.
import { decodePayload } from '../../shared/readings/decode-payload.ts';
import type { Admission } from '../../shared/readings/reading.ts';

export const ARRIVAL_MS = Date.parse('2026-03-02T07:00:00Z');

/** The admission of a value sent as JSON by the node `n1`, arriving at `ARRIVAL_MS`. */
export function decodeJson(value: unknown): Admission {
  return decodeText(JSON.stringify(value));
}

/** The same for a payload as it is written. */
export function decodeText(text: string): Admission {
  return decodePayload({ node: 'n1', payload: new TextEncoder().encode(text), arrivalMs: ARRIVAL_MS });
}

/** A reading of the node `n1` at `ARRIVAL_MS`, but for what is given. */
export function reading(given: { probe?: string; timeMs?: number; temperature?: number; humidity?: number }) {
  return { node: 'n1', probe: '', timeMs: ARRIVAL_MS, temperature: null, humidity: null, ...given };
}
