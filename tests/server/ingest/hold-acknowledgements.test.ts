// When an outside broker gets its acknowledgements: the broker's side is played byte by byte, the store is a promise that the test keeps or breaks.
import { type AddressInfo, createServer, type Socket } from 'node:net';
import mqtt from 'mqtt';
import { expect, it, onTestFinished } from 'vitest';
import { holdAcknowledgements } from '../../../server/ingest/hold-acknowledgements.ts';
import { publishFrame } from '../../support/mqtt-frame.ts';

const CONNACK = Buffer.from([0x20, 2, 0, 0]);
const PUBACK = 0x40;

interface Held {
  readonly text: string;
  keep(): void;
  lose(): void;
}

/** A client of a broker that the test plays, and what the client asks to have stored. */
async function openPlay() {
  const held: Held[] = [];
  const sockets: Socket[] = [];
  /** Packet ids that were acknowledged, by connection. */
  const acknowledged: number[][] = [];
  const server = createServer((socket) => {
    const own: number[] = [];
    sockets.push(socket);
    acknowledged.push(own);
    socket.on('error', () => undefined);
    socket.once('data', () => {
      socket.write(CONNACK);
      socket.on('data', (data) => {
        for (let at = 0; at < data.length; at += 4) if (data[at] === PUBACK) own.push(data.readUInt16BE(at + 2));
      });
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const client = mqtt.connect(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 1, clean: false, clientId: 'held' });
  holdAcknowledgements(
    client,
    ({ payload }) =>
      new Promise((resolve, reject) => {
        held.push({ text: String(payload), keep: resolve, lose: () => reject(new Error('the store is closed')) });
      }),
  );
  onTestFinished(async () => {
    await client.endAsync(true);
    await new Promise((resolve) => server.close(resolve));
  });
  await expect.poll(() => client.connected).toBe(true);
  return {
    held,
    acknowledged,
    deliver: (text: string, id: number) => sockets.at(-1)?.write(publishFrame('a/b', Buffer.from(text), id)),
    hangUp: () => sockets.at(-1)?.destroy(),
    connections: () => sockets.length,
    untilHeld: (count: number) => expect.poll(() => held.length).toBe(count),
    untilConnected: async (count: number) => {
      await expect.poll(() => sockets.length).toBe(count);
      await expect.poll(() => client.connected).toBe(true);
    },
  };
}

it('takes in what follows while a message is being stored, and acknowledges none of them', async () => {
  const play = await openPlay();
  for (const id of [1, 2, 3]) play.deliver(`m${id}`, id);
  await play.untilHeld(3);
  expect(play.held.map(({ text }) => text)).toEqual(['m1', 'm2', 'm3']);
  expect(play.acknowledged).toEqual([[]]);
});

it('acknowledges each message when it is stored, and only that one', async () => {
  const play = await openPlay();
  for (const id of [7, 8, 9]) play.deliver(`m${id}`, id);
  await play.untilHeld(3);
  play.held[0]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[7]]);
  play.held[1]?.keep();
  play.held[2]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[7, 8, 9]]);
});

it('knows an id that the broker uses again for the next message', async () => {
  const play = await openPlay();
  play.deliver('first', 1);
  await play.untilHeld(1);
  play.held[0]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[1]]);
  play.deliver('second', 1);
  await play.untilHeld(2);
  expect(play.acknowledged).toEqual([[1]]);
  play.held[1]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[1, 1]]);
});

it('breaks the connection when a message cannot be stored, so that it is sent again', async () => {
  const play = await openPlay();
  play.deliver('lost', 1);
  await play.untilHeld(1);
  play.held[0]?.lose();
  await play.untilConnected(2);
  play.deliver('lost', 1);
  await play.untilHeld(2);
  expect(play.acknowledged).toEqual([[], []]);
  play.held[1]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[], [1]]);
});

it('never answers a message of an earlier connection on a later one, where its id may mean another message', async () => {
  const play = await openPlay();
  play.deliver('before', 1);
  await play.untilHeld(1);
  play.hangUp();
  await play.untilConnected(2);
  play.deliver('after', 1);
  await play.untilHeld(2);
  play.held[0]?.keep();
  play.deliver('last', 2);
  await play.untilHeld(3);
  play.held[2]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[], [2]]);
  play.held[1]?.keep();
  await expect.poll(() => play.acknowledged).toEqual([[], [2, 1]]);
});
