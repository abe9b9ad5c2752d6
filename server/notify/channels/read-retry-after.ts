// Retry-After of RFC 9110 §10.2.3: seconds, or a date, which is measured by the answer's own Date so that a wrong clock here does no harm.
import type { IncomingHttpHeaders } from 'node:http';

/** How long the other side asks to be left alone, ms; undefined when it does not say or cannot be understood. */
export function readRetryAfter(headers: IncomingHttpHeaders): number | undefined {
  const text = headers['retry-after']?.trim() ?? '';
  if (/^\d{1,9}$/.test(text)) return Number(text) * 1000;
  const waitMs = Date.parse(text) - Date.parse(headers.date ?? '');
  return Number.isFinite(waitMs) && waitMs >= 0 ? waitMs : undefined;
}

/** Statuses that may pass by themselves: time-out, too early, too many, and every fault of the server. */
export function mayPass(status: number): boolean {
  return status === 408 || status === 425 || status === 429 || status >= 500;
}
