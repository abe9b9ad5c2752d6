// Passwords are kept as argon2id hashes only: the text itself is never stored, logged or compared.
import { hash, verify } from '@node-rs/argon2';

/** The argon2id hash of a password in PHC text form, at the library's defaults (19 MiB, 2 passes: OWASP's first choice, 2024). */
export function hashPassword(text: string): Promise<string> {
  return hash(normalize(text));
}

/** True when `text` is the password behind `hash`. A text that is not a hash is nobody's password: the answer is false. */
export async function verifyPassword(hash: string, text: string): Promise<boolean> {
  if (!hash.startsWith('$argon2')) return false;
  return verify(hash, normalize(text));
}

// RFC 8265 §4.2: the same password typed on two keyboards may reach us composed or decomposed.
function normalize(text: string): string {
  return text.normalize('NFC');
}
