// From the bytes of a message to a JSON value, or the reason why not. It never throws, whatever the bytes.
import type { Refusal } from './reading.ts';
import { because, type Reason } from './reason.ts';

/** 10,000 readings in the plain form take about 0.9 MB. */
export const PAYLOAD_MAX_BYTES = 1024 * 1024;

// Node and every browser have TextDecoder, but the ECMAScript library the shared layer is compiled against does not list it.
declare class TextDecoder {
  constructor(label: 'utf-8', options: { fatal: true });
  decode(bytes: Uint8Array): string;
}

/** The parsed JSON value, or one refusal. UTF-8 only, a byte order mark is skipped, at most 1 MiB. */
export function parsePayload(payload: Uint8Array): { readonly value: unknown } | { readonly refusal: Refusal } {
  if (payload.byteLength === 0) return refuse(because('messageEmpty'));
  if (payload.byteLength > PAYLOAD_MAX_BYTES) return refuse(because('messageTooLarge'));
  const text = decodeUtf8(payload);
  if (text === null) return refuse(because('notUtf8'));
  return parseJson(text);
}

function decodeUtf8(payload: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(payload);
  } catch {
    return null;
  }
}

function parseJson(text: string): { readonly value: unknown } | { readonly refusal: Refusal } {
  try {
    return { value: JSON.parse(text) };
  } catch {
    // Small boards print a missing measurement as nan, which JSON does not have.
    return refuse(because(/[:[,]\s*[-+]?nan\b/i.test(text) ? 'holdsNan' : 'notJson'));
  }
}

function refuse(reason: Reason): { readonly refusal: Refusal } {
  return { refusal: { reason, where: '' } };
}
