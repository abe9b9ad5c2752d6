// The hub behind the stream, on real sockets: a reader that does not read is let go and holds up nobody.
import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import { type AddressInfo, connect, type Socket } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createStreamHub, type StreamHub } from '../../../server/http/stream.ts';
import type { StreamEvent } from '../../../shared/api/stream.ts';
import { readStream } from '../../support/read-stream.ts';

const at = '2026-03-01T12:00:00Z';
const hello = (): StreamEvent => ({ event: 'hello', at });
const probe = (probeId: string): StreamEvent => ({ event: 'probe', at, probeId });

async function openHub(describeChamber: (id: string) => StreamEvent | null = () => null) {
  const hub = createStreamHub(describeChamber, probe, hello);
  // The owner of a stream is named by its address here; in the service it is who has signed in.
  const server: Server = createServer((request, response) =>
    hub.add(response, String(request.headers['x-owner'] ?? '')),
  );
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  onTestFinished(async () => {
    hub.close();
    server.closeAllConnections();
    server.close();
    await once(server, 'close');
  });
  return { hub, port, url: `http://127.0.0.1:${port}` };
}

/** A client that asks for the stream and then never reads on. */
async function openSleeper(port: number): Promise<Socket> {
  const socket = connect(port, '127.0.0.1');
  onTestFinished(() => void socket.destroy());
  socket.write('GET /api/v1/stream HTTP/1.1\r\nhost: x\r\n\r\n');
  await once(socket, 'readable');
  socket.pause();
  return socket;
}

/** Publishes until only `left` readers are there; gives up after far more than any socket holds. */
async function publishUntil(hub: StreamHub, left: number): Promise<number> {
  const padding = 'x'.repeat(50);
  for (let n = 0; n < 200_000; n += 1) {
    hub.publish(probe(`p${n}.${padding}`));
    if (n % 500 === 0) await new Promise((resolve) => setImmediate(resolve));
    if (hub.readers() === left) return n;
  }
  return expect.fail('the sleeping reader was never let go');
}

describe('a reader that does not read', () => {
  it('is let go, while the others hear everything', async () => {
    const { hub, port, url } = await openHub();
    const awake = await readStream(url, {});
    await openSleeper(port);
    expect(hub.readers()).toBe(2);
    const published = await publishUntil(hub, 1);
    hub.publish(probe('the-last'));
    await awake.next('probe', ({ probeId }) => probeId === 'the-last');
    expect(awake.events.filter(({ event }) => event === 'probe')).toHaveLength(published + 2);
  });
});

describe('letting go', () => {
  it('ends the streams of one owner and of nobody else', async () => {
    const { hub, url } = await openHub();
    const [ann, annToo, bea] = await Promise.all(
      ['ann', 'ann', 'bea'].map((owner) => readStream(url, { 'x-owner': owner })),
    );
    hub.letGo('ann');
    await Promise.all([ann?.ended, annToo?.ended]);
    expect(hub.readers()).toBe(1);
    hub.publish(probe('p1'));
    expect(await bea?.next('probe')).toMatchObject({ probeId: 'p1' });
    expect(ann?.events.map(({ event }) => event)).toEqual(['hello']);
  });
});

describe('a hub that is closed', () => {
  it('ends every stream, takes no new one, and is deaf to what comes after', async () => {
    const { hub, url } = await openHub();
    const stream = await readStream(url, {});
    hub.close();
    hub.publish(probe('too-late'));
    hub.climateChanged(['tent-1']);
    hub.probesChanged(['p1']);
    await stream.ended;
    expect(stream.events.map(({ event }) => event)).toEqual(['hello']);
    expect(hub.readers()).toBe(0);
    await expect(readStream(url, {})).rejects.toThrow();
  });
});

describe('probes', () => {
  it('that speak all the time are told together now and then, each once', async () => {
    const { hub, url } = await openHub();
    const stream = await readStream(url, {});
    for (let n = 0; n < 100; n += 1) hub.probesChanged(['p1', 'p2']);
    hub.probesChanged(['p3']);
    await stream.next('probe', ({ probeId }) => probeId === 'p3');
    expect(stream.events.flatMap((event) => (event.event === 'probe' ? [event.probeId] : []))).toEqual([
      'p1',
      'p2',
      'p3',
    ]);
  });
});

describe('climate', () => {
  it('of a chamber that was removed meanwhile is not said', async () => {
    const { hub, url } = await openHub((id) => (id === 'gone' ? null : probe(`climate-of-${id}`)));
    const stream = await readStream(url, {});
    hub.climateChanged(['gone', 'here', 'here']);
    await stream.next('probe', ({ probeId }) => probeId === 'climate-of-here');
    expect(stream.events).toHaveLength(2);
  });

  it('of many chambers leaves room between two for what is more urgent', async () => {
    const done: string[] = [];
    const { hub, url } = await openHub((id) => {
      setImmediate(() => done.push(`urgent beside ${id}`));
      done.push(id);
      return probe(id);
    });
    const stream = await readStream(url, {});
    hub.climateChanged(['one', 'two']);
    await stream.next('probe', ({ probeId }) => probeId === 'two');
    expect(done.slice(0, 3)).toEqual(['one', 'urgent beside one', 'two']);
  });

  it('is not even made while nobody listens', async () => {
    const made: string[] = [];
    const { hub, url } = await openHub((id) => {
      made.push(id);
      return probe(id);
    });
    hub.climateChanged(['unheard']);
    const stream = await readStream(url, {});
    hub.climateChanged(['heard']);
    await stream.next('probe');
    expect(made).toEqual(['heard']);
  });
});
