// Passwords are kept as argon2id hashes that say nothing about them.
import { describe, expect, it } from 'vitest';
import { hashPassword, verifyPassword } from '../../../server/people/passwords.ts';

const PASSWORD = 'tomatoes at dawn';

describe('passwords', () => {
  it('are known again, and only they', async () => {
    const hash = await hashPassword(PASSWORD);
    expect(await verifyPassword(hash, PASSWORD)).toBe(true);
    expect(await verifyPassword(hash, `${PASSWORD} `)).toBe(false);
    expect(await verifyPassword(hash, '')).toBe(false);
  });

  it('are hashed with argon2id, each time with another salt', async () => {
    const [first, second] = await Promise.all([hashPassword(PASSWORD), hashPassword(PASSWORD)]);
    expect(first).toMatch(/^\$argon2id\$/);
    expect(first).not.toBe(second);
    expect(first).not.toContain(PASSWORD);
  });

  it('are the same whether a keyboard composes an accent or not', async () => {
    expect(await verifyPassword(await hashPassword('café au tunnel'), 'cafe\u0301 au tunnel')).toBe(true);
  });

  it('never match what is no hash', async () => {
    expect(await verifyPassword('', PASSWORD)).toBe(false);
    expect(await verifyPassword(PASSWORD, PASSWORD)).toBe(false);
  });
});
