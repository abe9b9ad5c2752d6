// Telling what parsed JSON is, and naming a wrong value in a message without ever throwing or running long.

export type JsonObject = Readonly<Record<string, unknown>>;

/** True for a JSON object: not null, not a list. */
export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const SHOWN_CHARACTERS = 40;

/** A value in words for a refusal. Long text is cut; lists and objects are never walked, however deep they are. */
export function describeValue(value: unknown): string {
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return typeof value === 'string' ? `the text ${quoteText(value)}` : String(value);
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
