// The intake: group commit, a message that makes the program fail, a store that cannot write. The store stands in here as a function that the
// test answers; everything else is the intake itself.
import pino from 'pino';
import { describe, expect, it } from 'vitest';
import type { ArrivedMessage } from '../../../server/ingest/arrived-message.ts';
import { createIntake, type Intake, type IntakeParts } from '../../../server/ingest/intake.ts';
import { Problem } from '../../../shared/problem.ts';

const full = Problem.forOperator('store-full', 'The disk is full.');

describe('group commit', () => {
  it('writes what comes while a transaction runs in the next one, together and in order', async () => {
    const { intake, groups, release } = openIntake();
    const first = pushAll(intake, ['a', 'b']);
    await release();
    await first;
    const second = pushAll(intake, ['c']);
    const third = pushAll(intake, ['d', 'e', 'f']);
    await release();
    await Promise.all([second, third]);
    expect(groups).toEqual([
      ['a', 'b'],
      ['c', 'd', 'e', 'f'],
    ]);
  });

  it('writes 10,000 messages in few transactions of at most 1,000', async () => {
    const { intake, groups } = openIntake({ admit: async () => undefined });
    const names = Array.from({ length: 10_000 }, (_, n) => `m${n}`);
    await pushAll(intake, names);
    expect(groups).toHaveLength(10);
    expect(groups.flat()).toEqual(names);
  });

  it('ends a transaction at a mebibyte, so that buffers resent by many nodes hold up nothing else for long', async () => {
    const { intake, groups } = openIntake({ admit: async () => undefined });
    const half = 512 * 1024;
    await Promise.all(['a', 'b', 'c', 'd', 'e'].map((topic) => intake.push(message(topic, half))));
    expect(groups).toEqual([['a', 'b'], ['c', 'd'], ['e']]);
  });

  it('takes a message that is larger than a transaction should be by itself', async () => {
    const { intake, groups } = openIntake({ admit: async () => undefined });
    await Promise.all([intake.push(message('large', 10 * 1024 * 1024)), intake.push(message('next'))]);
    expect(groups).toEqual([['large'], ['next']]);
  });

  it('answers nobody before the transaction is over', async () => {
    const { intake, release } = openIntake();
    const answered: string[] = [];
    const pushed = intake.push(message('a')).then(() => answered.push('a'));
    await nextTurns(5);
    expect(answered).toEqual([]);
    await release();
    await pushed;
    expect(answered).toEqual(['a']);
  });
});

describe('a message that makes admission fail', () => {
  it('is put on record alone; the others of its group are stored in their order', async () => {
    const stored: string[] = [];
    const { intake, refused } = openIntake({ admit: failOn(['bad'], stored) });
    await pushAll(intake, ['a', 'bad', 'b', 'c']);
    expect(stored).toEqual(['a', 'b', 'c']);
    expect(refused).toEqual(['bad']);
    expect(intake.trouble()).toBeNull();
  });

  it('does not count as trouble of the store when the data forbid what it brings', async () => {
    const conflict = new Problem('conflict', ({ problems }) => problems.doesNotFit);
    const stored: string[] = [];
    const { intake, refused } = openIntake({ admit: failOn(['bad'], stored, conflict) });
    await pushAll(intake, ['a', 'bad', 'b']);
    expect({ stored, refused }).toEqual({ stored: ['a', 'b'], refused: ['bad'] });
  });

  it('waits with all behind it when even the record cannot be written', async () => {
    const stored: string[] = [];
    let isFull = true;
    const { intake, refused } = openIntake({
      admit: failOn(['bad'], stored),
      refuse: async () => {
        if (isFull) throw full;
      },
    });
    const pushed = pushAll(intake, ['a', 'bad', 'b']);
    await until(() => intake.trouble() !== null);
    expect({ stored, waiting: intake.waiting() }).toEqual({ stored: ['a'], waiting: 2 });
    isFull = false;
    await pushed;
    expect({ stored, refused }).toEqual({ stored: ['a', 'b'], refused: ['bad', 'bad'] });
    expect(intake.trouble()).toBeNull();
  });

  it('is not acknowledged when putting it on record fails for another reason', async () => {
    const { intake } = openIntake({
      admit: failOn(['bad'], []),
      refuse: () => Promise.reject(new TypeError('a fault of ours')),
    });
    await expect(intake.push(message('bad'))).rejects.toMatchObject({ code: 'unavailable' });
    await expect(intake.push(message('good'))).resolves.toBeUndefined();
  });
});

describe('a store that cannot write', () => {
  it('keeps messages in their order, answers none, and stores them by itself when there is room again', async () => {
    let isFull = true;
    const stored: string[] = [];
    const { intake } = openIntake({
      admit: async (group) => {
        if (isFull) throw full;
        stored.push(...group.map(({ topic }) => topic));
      },
    });
    const answered: string[] = [];
    const push = (topic: string) => intake.push(message(topic)).then(() => answered.push(topic));
    const pushed = [push('a'), push('b')];
    await until(() => intake.trouble() !== null);
    pushed.push(push('c'));
    expect(intake.trouble()).toBe(full);
    expect({ answered, waiting: intake.waiting() }).toEqual({ answered: [], waiting: 3 });
    isFull = false;
    await Promise.all(pushed);
    expect(stored).toEqual(['a', 'b', 'c']);
    expect(answered).toEqual(['a', 'b', 'c']);
    expect(intake.trouble()).toBeNull();
  });

  it('keeps the order when the trouble begins while a bad message is being sought out', async () => {
    const stored: string[] = [];
    let isFull = false;
    const { intake } = openIntake({
      admit: async (group) => {
        if (group.length > 1 && group.some(({ topic }) => topic === 'bad')) throw new TypeError('a fault of ours');
        if (group[0]?.topic === 'b') isFull = !isFull;
        if (isFull) throw full;
        stored.push(...group.map(({ topic }) => topic));
      },
    });
    await pushAll(intake, ['a', 'b', 'c', 'bad', 'd']);
    expect(stored).toEqual(['a', 'b', 'c', 'bad', 'd']);
  });

  it('turns messages away when 100,000 wait: nodes keep their readings themselves', async () => {
    const { intake } = openIntake({ admit: () => Promise.reject(full) });
    const pushed = Array.from({ length: 100_000 }, () => intake.push(message('a')));
    await expect(intake.push(message('one too many'))).rejects.toMatchObject({ code: 'unavailable' });
    const outcomes = Promise.allSettled(pushed);
    await intake.close();
    expect((await outcomes).filter(({ status }) => status === 'fulfilled')).toEqual([]);
  });

  it('turns messages away when 64 MiB wait, however few they are', async () => {
    const { intake } = openIntake({ admit: () => Promise.reject(full) });
    const mebibyte = 1024 * 1024;
    const pushed = Array.from({ length: 64 }, () => intake.push(message('a', mebibyte)));
    await expect(intake.push(message('b', 1))).rejects.toMatchObject({ code: 'unavailable' });
    const outcomes = Promise.allSettled(pushed);
    await intake.close();
    await outcomes;
    expect(intake.waiting()).toBe(0);
  });
});

describe('close', () => {
  it('lets the running transaction end, and turns away what waits and what comes', async () => {
    const { intake, release } = openIntake();
    const running = intake.push(message('a'));
    await nextTurns(3);
    const waiting = expect(intake.push(message('b'))).rejects.toMatchObject({ code: 'unavailable' });
    const closed = intake.close();
    await expect(intake.push(message('c'))).rejects.toMatchObject({ message: 'The service is stopping.' });
    await release();
    await closed;
    await expect(running).resolves.toBeUndefined();
    await waiting;
  });

  it('does not wait out a pause of a store in trouble', async () => {
    const { intake } = openIntake({ admit: () => Promise.reject(full), retryMs: 3_600_000 });
    const waiting = expect(intake.push(message('a'))).rejects.toMatchObject({ code: 'unavailable' });
    await until(() => intake.trouble() !== null);
    await intake.close();
    await waiting;
  });
});

interface TestIntake {
  readonly intake: Intake;
  /** Topics of each group that admission was asked to store. */
  readonly groups: string[][];
  /** Topics that were put on record. */
  readonly refused: string[];
  /** Lets the transaction that runs, or the next one to begin, end well. */
  release(): Promise<void>;
}

function openIntake(parts: Partial<IntakeParts> = {}): TestIntake {
  const groups: string[][] = [];
  const refused: string[] = [];
  const held: (() => void)[] = [];
  const hold = () => new Promise<void>((resolve) => held.push(resolve));
  const intake = createIntake({
    log: pino({ level: 'silent' }),
    retryMs: 1,
    ...parts,
    admit: (group) => {
      groups.push(group.map(({ topic }) => topic));
      return parts.admit?.(group) ?? hold();
    },
    refuse: async (one, reason) => {
      refused.push(one.topic);
      await parts.refuse?.(one, reason);
    },
  });
  return {
    intake,
    groups,
    refused,
    async release() {
      await until(() => held.length > 0);
      held.shift()?.();
    },
  };
}

/** An admission that fails as the program itself may, on these topics. */
function failOn(bad: readonly string[], stored: string[], error: Error = new TypeError('a fault of ours')) {
  return async (group: readonly ArrivedMessage[]) => {
    if (group.some(({ topic }) => bad.includes(topic))) throw error;
    stored.push(...group.map(({ topic }) => topic));
  };
}

function message(topic: string, bytes = 2): ArrivedMessage {
  return { topic, payload: new Uint8Array(bytes), arrivalMs: 0, retained: false };
}

async function pushAll(intake: Intake, topics: readonly string[]): Promise<void> {
  await Promise.all(topics.map((topic) => intake.push(message(topic))));
}

async function until(isTrue: () => boolean): Promise<void> {
  while (!isTrue()) await nextTurns(1);
}

async function nextTurns(count: number): Promise<void> {
  for (let turn = 0; turn < count; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}
