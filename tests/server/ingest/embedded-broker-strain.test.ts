// The embedded broker against bytes that no client library sends, and in the moments in which it is closed.
import { connect, type Socket } from 'node:net';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { connectNode } from '../../support/connect-node.ts';
import { connectFrame, mqttFrame, publishFrame } from '../../support/mqtt-frame.ts';
import { openTestApp, type TestApp } from '../../support/open-test-app.ts';

const good = { temperature: 21.4, humidity: 93.1 };
const SIXTEEN_MIB = 16 * 1024 * 1024;
const CONNACK = [0x20, 2, 0, 0];

describe('a packet above 16 MiB', () => {
  it('ends its connection by its header, and the service goes on', async () => {
    const test = await openTestApp();
    const socket = openSocket(test);
    await socket.write(connectFrame('large'));
    expect(await socket.nextBytes()).toEqual(CONNACK);
    await socket.write(mqttFrame(0x32, Buffer.alloc(0), SIXTEEN_MIB + 1));
    await socket.closed;
    await expectStores(test);
  });

  it('ends its connection before the node has signed in', async () => {
    const test = await openTestApp();
    const socket = openSocket(test);
    await socket.write(mqttFrame(0x10, Buffer.alloc(0), SIXTEEN_MIB + 1));
    await socket.closed;
    await expectStores(test);
  });

  it('is let in when it is one byte shorter: what it holds is refused on record', async () => {
    const test = await openTestApp();
    const topic = 'takewell/v1/large/readings';
    const socket = openSocket(test);
    await socket.write(connectFrame('large'));
    expect(await socket.nextBytes()).toEqual(CONNACK);
    const payload = Buffer.alloc(SIXTEEN_MIB - 2 - topic.length - 2, 0x20);
    await socket.write(publishFrame(topic, payload, 7));
    expect(await socket.nextBytes()).toEqual([0x40, 2, 0, 7]);
    expect((await test.api.get('/refused')).body).toMatchObject({ items: [{ topic }] });
  });
});

describe('bytes of any kind', () => {
  it('end at most their own connection', async () => {
    const test = await openTestApp();
    const start = fc.constantFrom(Buffer.alloc(0), connectFrame('fuzz'));
    const garbage = fc.uint8Array({ minLength: 1, maxLength: 300 });
    await fc.assert(
      fc.asyncProperty(start, garbage, async (head, bytes) => {
        const socket = openSocket(test);
        await socket.write(Buffer.concat([head, bytes]));
        socket.end();
        await socket.closed;
      }),
      { numRuns: 200 },
    );
    await expectStores(test);
  });

  it('that break off in the middle of a reading store nothing of it', async () => {
    const test = await openTestApp();
    const frame = publishFrame('takewell/v1/n1/readings', Buffer.from(JSON.stringify(good)), 1);
    for (const length of [1, 2, 5, 20, frame.length - 1]) {
      const socket = openSocket(test);
      await socket.write(Buffer.concat([connectFrame(`cut-${length}`), frame.subarray(0, length)]));
      expect(await socket.nextBytes()).toEqual(CONNACK);
      socket.end();
      await socket.closed;
    }
    expect(await test.app.store.readings.countAll()).toBe(0);
  });
});

describe('a node that goes back to sleep without waiting for its acknowledgement', () => {
  it('has its reading stored all the same', async () => {
    const test = await openTestApp();
    const frame = publishFrame('takewell/v1/n1/readings', Buffer.from(JSON.stringify(good)), 1);
    const disconnect = mqttFrame(0xe0, Buffer.alloc(0));
    const socket = openSocket(test);
    await socket.write(connectFrame('hasty'));
    expect(await socket.nextBytes()).toEqual(CONNACK);
    await socket.write(Buffer.concat([frame, disconnect]));
    socket.end();
    await socket.closed;
    await expect.poll(() => test.app.store.readings.countAll()).toBe(1);
  });
});

interface TestSocket {
  readonly closed: Promise<void>;
  write(bytes: Uint8Array): Promise<void>;
  /** What the broker says next. */
  nextBytes(): Promise<number[]>;
  end(): void;
}

function openSocket({ app }: TestApp): TestSocket {
  const socket: Socket = connect(app.mqttPort ?? 0, '127.0.0.1');
  const heard: Buffer[] = [];
  socket.on('data', (data) => heard.push(data));
  // A connection that the broker breaks off is told by its end.
  socket.on('error', () => undefined);
  const closed = new Promise<void>((resolve) => socket.once('close', () => resolve()));
  return {
    closed,
    write: (bytes) => new Promise((resolve) => socket.write(bytes, () => resolve())),
    async nextBytes() {
      await expect.poll(() => heard.length, { timeout: 10_000 }).toBeGreaterThan(0);
      return [...(heard.shift() ?? [])];
    },
    end: () => socket.end(),
  };
}

async function expectStores({ app }: TestApp): Promise<void> {
  const before = await app.store.readings.countAll();
  const node = await connectNode(app.mqttPort, 'after');
  await node.send({ ...good, time: '2026-03-02T07:00:00Z' });
  expect(await app.store.readings.countAll()).toBe(before + 1);
}
