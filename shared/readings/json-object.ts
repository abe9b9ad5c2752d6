// Telling what parsed JSON is, and naming a wrong value in a refusal without ever throwing or running long.
import { because, type ReasonPart } from './reason.ts';

export type JsonObject = Readonly<Record<string, unknown>>;

/** True for a JSON object: not null, not a list. */
export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const SHOWN_CHARACTERS = 40;

/**
 * What a value of parsed JSON is, for a refusal: `null`, true, false and numbers as they are written. Long text is cut; lists and objects are
 * never walked, however deep they are.
 */
export function describeValue(value: unknown): ReasonPart {
  if (Array.isArray(value)) return because('list');
  if (isJsonObject(value)) return because('object');
  return typeof value === 'string' ? because('text', quoteText(value)) : String(value);
}

/** Text in quotes for a refusal, cut at 40 characters, control characters escaped. */
export function quoteText(text: string): string {
  return JSON.stringify(text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text);
}

/** The value if it is text, else null. */
export function asText(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

/** The value if it is a finite number, else null: JSON can spell 1e999, which is not one. */
export function asNumber(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}
