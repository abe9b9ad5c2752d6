// The signature by which a push service knows this site (RFC 8292), made once for a service and used again for an hour: making one is about a fifth
// of what signing and encrypting a push cost.
import webPush from 'web-push';
import { HOUR_MS } from '../../../shared/units.ts';
import type { KeyPair } from '../vapid-keys.ts';

export interface VapidSignatures {
  /** The header `Authorization` for the push service of an endpoint. Throws when subject or keys are unfit to sign with. */
  headerFor(endpoint: URL, pair: KeyPair, subject: string): string;
  /** One was refused: the next are made anew. */
  forget(): void;
}

/** RFC 8292 §2 lets one hold for 24 hours, the library lets it for 12: that is room enough for clocks that differ. */
const REUSED_MS = HOUR_MS;
/** A handful of push services serve all browsers; but endpoints come from people. */
const MOST_KEPT = 100;

export function createVapidSignatures(nowMs: () => number): VapidSignatures {
  const kept = new Map<string, { readonly header: string; readonly madeMs: number }>();
  return {
    headerFor({ protocol, host }, { publicKey, privateKey }, subject) {
      const service = `${protocol}//${host}`;
      const madeFor = `${service} ${publicKey} ${subject}`;
      const known = kept.get(madeFor);
      const ageMs = nowMs() - (known?.madeMs ?? 0);
      // One from the future was made by a clock that has been set since.
      if (known !== undefined && ageMs >= 0 && ageMs < REUSED_MS) return known.header;
      const { Authorization: header } = webPush.getVapidHeaders(service, subject, publicKey, privateKey, 'aes128gcm');
      if (kept.size >= MOST_KEPT) kept.clear();
      kept.set(madeFor, { header, madeMs: nowMs() });
      return header;
    },
    forget: () => kept.clear(),
  };
}
