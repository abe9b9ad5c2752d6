// JSON Pointer (RFC 6901): the place of a value in a JSON document. It reads own members only, never inherited ones.
import { isJsonObject } from './json-object.ts';

/** What a JSON Pointer looks like: empty, or tokens each led by `/`, with `~0` for `~` and `~1` for `/`. */
export const jsonPointerPattern = /^(?:\/(?:[^~/]|~[01])*)*$/;

/**
 * The value a pointer leads to, or `undefined` when it leads nowhere (no such member, past the end of a list, `-`).
 * The pointer must match `jsonPointerPattern`; anything else leads nowhere.
 */
export function resolvePointer(document: unknown, pointer: string): unknown {
  if (!jsonPointerPattern.test(pointer)) return undefined;
  let value = document;
  for (const token of pointer.split('/').slice(1)) value = stepInto(value, unescapeToken(token));
  return value;
}

/** One member name as a pointer token (RFC 6901 §3). */
export function pointerToken(name: string): string {
  return name.replaceAll('~', '~0').replaceAll('/', '~1');
}

function unescapeToken(token: string): string {
  // RFC 6901 §4: first ~1, then ~0, so that ~01 becomes ~1 and not /.
  return token.replaceAll('~1', '/').replaceAll('~0', '~');
}

function stepInto(value: unknown, token: string): unknown {
  if (Array.isArray(value)) return /^(?:0|[1-9]\d*)$/.test(token) ? value[Number(token)] : undefined;
  return isJsonObject(value) && Object.hasOwn(value, token) ? value[token] : undefined;
}
