// Feeding payloads to the decoders in tests: one node, one arrival time; refusals as an English reader has them.
import { decodePayload } from '../../shared/readings/decode-payload.ts';
import type { Admission } from '../../shared/readings/reading.ts';
import { sayRefusal } from '../../shared/readings/say-refusal.ts';
import { english } from '../../shared/words/en/english.ts';

export const ARRIVAL_MS = Date.parse('2026-03-02T07:00:00Z');

/** An admission with its reasons in words. */
export interface SaidAdmission extends Omit<Admission, 'refused'> {
  readonly refused: readonly { readonly reason: string; readonly where: string }[];
}

/** The admission of a payload sent by the node `n1`, arriving at `ARRIVAL_MS`. */
export function admit(payload: string | Uint8Array): Admission {
  const bytes = typeof payload === 'string' ? new TextEncoder().encode(payload) : payload;
  return decodePayload({ node: 'n1', payload: bytes, arrivalMs: ARRIVAL_MS });
}

/** The same of a value sent as JSON, in English. */
export function decodeJson(value: unknown): SaidAdmission {
  return decodeText(JSON.stringify(value));
}

/** The same for a payload as it is written. */
export function decodeText(text: string): SaidAdmission {
  return inEnglish(admit(text));
}

export function inEnglish<Given extends Pick<Admission, 'refused'>>(admission: Given) {
  const refused = admission.refused.map(({ reason, where }) => ({ reason: sayRefusal(reason, english), where }));
  return { ...admission, refused };
}

/** A reading of the node `n1` at `ARRIVAL_MS`, but for what is given. */
export function reading(given: { probe?: string; timeMs?: number; temperature?: number; humidity?: number }) {
  return { node: 'n1', probe: '', timeMs: ARRIVAL_MS, temperature: null, humidity: null, ...given };
}
