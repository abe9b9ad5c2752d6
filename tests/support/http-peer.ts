// A real HTTP server on a free loopback port that plays the other side of a request: it records what comes and answers as it is told.
import { createServer, type IncomingHttpHeaders, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A status with its headers, or no answer at all until the server closes. */
export type PeerAnswer = { readonly status: number; readonly headers?: Record<string, string> } | 'stall';

export interface PeerRequest {
  readonly path: string;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

export interface HttpPeer {
  readonly origin: string;
  readonly port: number;
  /** Resolves when so many requests have come in all. */
  whenAsked(count: number): Promise<void>;
  close(): Promise<void>;
}

/** `answer` is asked for each request, after its body has come. */
export async function openHttpPeer(answer: (request: PeerRequest) => PeerAnswer): Promise<HttpPeer> {
  const waiting: { readonly count: number; readonly resolve: () => void }[] = [];
  let asked = 0;
  const server = createServer((request, response) => {
    const take = (body: Buffer) => {
      asked += 1;
      reply(response, answer({ path: request.url ?? '/', headers: request.headers, body }));
      for (const one of waiting) if (asked >= one.count) one.resolve();
    };
    // A sender that is killed in the middle has sent nothing.
    readBody(request).then(take, () => response.destroy());
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    port,
    whenAsked: (count) =>
      new Promise((resolve) => {
        if (asked >= count) resolve();
        else waiting.push({ count, resolve });
      }),
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

async function readBody(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}

function reply(response: ServerResponse, answer: PeerAnswer): void {
  if (answer === 'stall') return;
  response.writeHead(answer.status, answer.headers).end();
}
