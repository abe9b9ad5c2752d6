// Random secrets that the program hands out once and keeps as a hash: session ids, tokens of machines, passwords of nodes.
// They carry 192 bits of chance, so a plain hash is enough; passwords of people are hashed in passwords.ts.
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** A new secret, URL-safe. */
export function makeSecret(): string {
  return randomBytes(24).toString('base64url');
}

export function hashSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('base64url');
}

/** Compares without telling by its time how much was right. */
export function isSameText(a: string, b: string): boolean {
  const [left, right] = [createHash('sha256').update(a).digest(), createHash('sha256').update(b).digest()];
  return timingSafeEqual(left, right);
}
