// A reason as it was stored. Another version may have had other sentences: one that is not known here is none.
import { refusals } from '../words/en/refusals.ts';
import { isJsonObject } from './json-object.ts';
import type { Reason, ReasonKey, ReasonPart } from './reason.ts';

/** The reason in parsed JSON; null for anything that this version has no sentence for. */
export function readReason(value: unknown): Reason | null {
  return isReason(value) ? value : null;
}

function isReason(value: unknown): value is Reason {
  if (!isJsonObject(value)) return false;
  const { key, parts } = value;
  return isKey(key) && Array.isArray(parts) && parts.length === partsOf(key) && parts.every(isPart);
}

function isKey(key: unknown): key is ReasonKey {
  return typeof key === 'string' && Object.hasOwn(refusals, key);
}

function partsOf(key: ReasonKey): number {
  const said = refusals[key];
  return typeof said === 'string' ? 0 : said.length;
}

function isPart(part: unknown): part is ReasonPart {
  return typeof part === 'string' || typeof part === 'number' || isReason(part);
}
