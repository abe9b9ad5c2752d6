// One at a time: no two decide on the same state.
import { describe, expect, it } from 'vitest';
import { createTurnstile } from '../../../server/watch/turnstile.ts';

describe('the turnstile', () => {
  it('lets one through after the other, in the order in which they came', async () => {
    const turnstile = createTurnstile();
    const course: string[] = [];
    const pass = (name: string) =>
      turnstile.inTurn(async () => {
        course.push(`${name} in`);
        await new Promise((resolve) => setImmediate(resolve));
        course.push(`${name} out`);
        return name;
      });
    expect(await Promise.all(['a', 'b', 'c'].map(pass))).toEqual(['a', 'b', 'c']);
    expect(course).toEqual(['a in', 'a out', 'b in', 'b out', 'c in', 'c out']);
  });

  it('goes on after one that failed, and tells only that one', async () => {
    const turnstile = createTurnstile();
    const failing = turnstile.inTurn(() => Promise.reject(new Error('the disk is gone')));
    const next = turnstile.inTurn(async () => 'next');
    await expect(failing).rejects.toThrow('the disk is gone');
    await expect(next).resolves.toBe('next');
  });
});
