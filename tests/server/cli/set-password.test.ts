// The `set-password` command: the new password holds, the old sessions do not, and a bad one changes nothing.
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { hashPassword, verifyPassword } from '../../../server/people/passwords.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { runForJson, runTakewell, temporaryFolder } from './run-takewell.ts';

const OLD = 'old and long enough';
const NEW = 'new, with tomatoes';

/** The store stays open, as the service keeps it. */
async function nursery() {
  const dataDir = temporaryFolder();
  const store = openStore({ file: join(dataDir, 'takewell.sqlite'), nowMs: 0 });
  onTestFinished(() => store.close());
  await store.people.add({
    id: 'noor',
    name: 'Noor',
    role: 'manager',
    passwordHash: await hashPassword(OLD),
    createdMs: 0,
  });
  await store.people.addSession({ tokenHash: 'abc', personId: 'noor', createdMs: 0, expiresMs: 10_000 });
  const isPassword = async (text: string) => verifyPassword((await store.people.get('noor'))?.passwordHash ?? '', text);
  return { dataDir, store, isPassword };
}

describe('set-password', () => {
  it('takes the first line of standard input as the new password and ends all sessions', async () => {
    const { dataDir, store, isPassword } = await nursery();
    const printed = await runForJson(['set-password', 'noor'], { dataDir, stdin: `${NEW}\nsecond line\n` });
    expect(printed).toEqual({ name: 'Noor', changed: true });
    expect(await isPassword(NEW)).toBe(true);
    expect(await isPassword(OLD)).toBe(false);
    expect(await store.people.bySession('abc', 1)).toBeNull();
  });

  const refused: [string, string, string, string][] = [
    ['one character too short', 'Noor', 'nine char', '10 characters'],
    ['no line at all', 'Noor', '', '10 characters'],
    ['nobody of that name', 'Bram', `${NEW}\n`, '"Bram"'],
  ];
  it.each(refused)('changes nothing for %s', async (_, name, stdin, said) => {
    const { dataDir, store, isPassword } = await nursery();
    const { code, stdout, stderr } = await runTakewell(['set-password', name], { dataDir, stdin });
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^[^\n]+\n$/);
    expect(stderr).toContain(said);
    expect(await isPassword(OLD)).toBe(true);
    expect(await store.people.bySession('abc', 1)).not.toBeNull();
  });

  it('takes one of exactly ten characters', async () => {
    const { dataDir, isPassword } = await nursery();
    const { code } = await runTakewell(['set-password', 'Noor'], { dataDir, stdin: '0123456789' });
    expect(code).toBe(0);
    expect(await isPassword('0123456789')).toBe(true);
  });

  it('never prints the password', async () => {
    const { dataDir } = await nursery();
    const { stdout, stderr } = await runTakewell(['set-password', 'Noor'], { dataDir, stdin: `${NEW}\n` });
    expect(stdout + stderr).not.toContain(NEW);
  });
});
