// Server-sent events. Events are hints: who missed some asks for everything anew. A reader that cannot follow is let go, never waited for.
import type { ServerResponse } from 'node:http';
import type { StreamEvent } from '../../shared/api/stream.ts';

export interface StreamHub {
  /** `ownerId`: the person or token that reads. */
  add(response: ServerResponse, ownerId: string): void;
  /** Lets the readers of somebody go who may no longer read as before; a browser comes back by itself and is asked who it is. */
  letGo(ownerId: string): void;
  publish(event: StreamEvent): void;
  /** The climate of chambers changed: sent at most twice a second, made only when somebody listens. */
  climateChanged(chamberIds: readonly string[]): void;
  /** Probes were heard or changed: each is told once in five seconds at most. */
  probesChanged(probeIds: readonly string[]): void;
  readers(): number;
  close(): void;
}

const KEEP_ALIVE_MS = 20_000;
const CLIMATE_PAUSE_MS = 500;
const PROBE_PAUSE_MS = 5_000;
/** A reader with more than this unsent is a phone that has gone. */
const MOST_UNSENT_BYTES = 1_000_000;

/** `describe` makes the climate event of a chamber, or null when it is gone; `hello` opens every connection. */
export function createStreamHub(
  describe: (chamberId: string) => StreamEvent | null,
  describeProbe: (probeId: string) => StreamEvent,
  hello: () => StreamEvent,
): StreamHub {
  const readers = new Map<ServerResponse, string>();
  let isClosed = false;

  const send = (reader: ServerResponse, text: string) => {
    if (reader.writableLength > MOST_UNSENT_BYTES) reader.destroy();
    else reader.write(text);
  };
  const dismiss = (reader: ServerResponse) => {
    readers.delete(reader);
    reader.end();
  };
  const publish = (event: StreamEvent) => {
    const text = format(event);
    for (const reader of readers.keys()) send(reader, text);
  };
  const publishAll = async (ids: Iterable<string>, make: (id: string) => StreamEvent | null) => {
    for (const id of ids) {
      const event = make(id);
      if (event !== null) publish(event);
      // The loop is free between two: an alert does not wait for the screens of all chambers.
      await new Promise((resolve) => setImmediate(resolve));
    }
  };
  const climates = createGathering(CLIMATE_PAUSE_MS, (ids) => void publishAll(ids, describe));
  const probes = createGathering(PROBE_PAUSE_MS, (ids) => void publishAll(ids, describeProbe));
  const keepAlive = setInterval(() => {
    publish({ event: 'pulse', at: hello().at });
  }, KEEP_ALIVE_MS);
  keepAlive.unref();

  return {
    add(response, ownerId) {
      if (isClosed) return void response.destroy();
      response.writeHead(200, {
        'content-type': 'text/event-stream',
        'cache-control': 'no-store',
        'x-accel-buffering': 'no',
        connection: 'keep-alive',
      });
      response.on('close', () => readers.delete(response));
      readers.set(response, ownerId);
      send(response, `retry: 2000\n${format(hello())}`);
    },
    letGo(ownerId) {
      for (const [reader, owner] of readers) if (owner === ownerId) dismiss(reader);
    },
    publish,
    climateChanged(chamberIds) {
      if (readers.size > 0) climates.add(chamberIds);
    },
    probesChanged(probeIds) {
      if (readers.size > 0) probes.add(probeIds);
    },
    readers: () => readers.size,
    close() {
      clearInterval(keepAlive);
      climates.stop();
      probes.stop();
      isClosed = true;
      for (const reader of readers.keys()) dismiss(reader);
    },
  };
}

/** Gathers ids and hands them over together, at most once in `pauseMs`. */
function createGathering(pauseMs: number, handOver: (ids: readonly string[]) => void) {
  const gathered = new Set<string>();
  let timer: NodeJS.Timeout | null = null;
  const flush = () => {
    timer = null;
    const ids = [...gathered];
    gathered.clear();
    handOver(ids);
  };
  return {
    add(ids: readonly string[]) {
      for (const id of ids) gathered.add(id);
      if (gathered.size > 0) timer ??= setTimeout(flush, pauseMs);
    },
    stop() {
      if (timer !== null) clearTimeout(timer);
    },
  };
}

function format(event: StreamEvent): string {
  return `event: ${event.event}\ndata: ${JSON.stringify(event)}\n\n`;
}
