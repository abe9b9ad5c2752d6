// Server-sent events. Events are hints: who missed some asks for everything anew. A reader that cannot follow is let go, never waited for.
import type { ServerResponse } from 'node:http';
import type { StreamEvent } from '../../shared/api/stream.ts';

export interface StreamHub {
  add(response: ServerResponse): void;
  publish(event: StreamEvent): void;
  /** The climate of chambers changed: sent at most twice a second, made only when somebody listens. */
  climateChanged(chamberIds: readonly string[]): void;
  readers(): number;
  close(): void;
}

const KEEP_ALIVE_MS = 20_000;
const CLIMATE_PAUSE_MS = 500;
/** A reader with more than this unsent is a phone that has gone. */
const MOST_UNSENT_BYTES = 1_000_000;

/** `describe` makes the climate event of a chamber, or null when it is gone; `hello` opens every connection. */
export function createStreamHub(
  describe: (chamberId: string) => StreamEvent | null,
  hello: () => StreamEvent,
): StreamHub {
  const readers = new Set<ServerResponse>();
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | null = null;

  const send = (reader: ServerResponse, text: string) => {
    if (reader.writableLength > MOST_UNSENT_BYTES) reader.destroy();
    else reader.write(text);
  };
  const publish = (event: StreamEvent) => {
    const text = format(event);
    for (const reader of readers) send(reader, text);
  };
  const flush = () => {
    timer = null;
    for (const id of changed) {
      const event = describe(id);
      if (event !== null) publish(event);
    }
    changed.clear();
  };
  const keepAlive = setInterval(() => {
    for (const reader of readers) send(reader, ': still here\n\n');
  }, KEEP_ALIVE_MS);
  keepAlive.unref();

  return {
    add(response) {
      response.writeHead(200, {
        'content-type': 'text/event-stream',
        'cache-control': 'no-store',
        'x-accel-buffering': 'no',
        connection: 'keep-alive',
      });
      response.on('close', () => readers.delete(response));
      readers.add(response);
      send(response, `retry: 2000\n${format(hello())}`);
    },
    publish,
    climateChanged(chamberIds) {
      if (readers.size === 0) return;
      for (const id of chamberIds) changed.add(id);
      timer ??= setTimeout(flush, CLIMATE_PAUSE_MS);
    },
    readers: () => readers.size,
    close() {
      clearInterval(keepAlive);
      if (timer !== null) clearTimeout(timer);
      for (const reader of readers) reader.end();
    },
  };
}

function format(event: StreamEvent): string {
  return `event: ${event.event}\ndata: ${JSON.stringify(event)}\n\n`;
}
