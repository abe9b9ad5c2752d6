// Checks the signature a push comes with, as a push service does (RFC 8292): the key, the signed token, for whom it is and how long it holds.
import { createPublicKey, verify } from 'node:crypto';

export interface Vapid {
  readonly aud: string;
  readonly exp: number;
  readonly sub: string;
  /** Public key that signed, base64url. */
  readonly key: string;
}

const LONGEST_SECONDS = 24 * 3600;

/** Reads `vapid t=<token>, k=<key>`; throws an Error that says what is wrong with it. */
export function readVapid(authorization: string, audience: string): Vapid {
  const [, token = '', key = ''] = /^vapid t=([^,\s]+),\s*k=([A-Za-z0-9_-]+)$/.exec(authorization) ?? [];
  const [head = '', claims = '', signature = ''] = token.split('.');
  if (fromBase64url(head).alg !== 'ES256') throw new Error('the token is not signed with ES256');
  if (!isSignedBy(key, `${head}.${claims}`, signature)) throw new Error('the signature is not of this key');
  const { aud, exp, sub } = fromBase64url(claims);
  const leftSeconds = Number(exp) - Date.now() / 1000;
  if (aud !== audience) throw new Error(`the token is for ${String(aud)}`);
  if (!(leftSeconds > 0 && leftSeconds <= LONGEST_SECONDS)) throw new Error('the token holds too long or no more');
  if (!/^(mailto:|https:)/.test(String(sub))) throw new Error('the subject is neither mailto: nor https:');
  return { aud, exp: Number(exp), sub: String(sub), key };
}

function isSignedBy(key: string, text: string, signature: string): boolean {
  const point = Buffer.from(key, 'base64url');
  const [x, y] = [point.subarray(1, 33).toString('base64url'), point.subarray(33).toString('base64url')];
  const publicKey = createPublicKey({ key: { kty: 'EC', crv: 'P-256', x, y }, format: 'jwk' });
  const sized = { key: publicKey, dsaEncoding: 'ieee-p1363' as const };
  return verify('sha256', Buffer.from(text), sized, Buffer.from(signature, 'base64url'));
}

function fromBase64url(text: string): Record<string, unknown> {
  return JSON.parse(Buffer.from(text, 'base64url').toString('utf8'));
}
