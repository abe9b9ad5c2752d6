// A reader of the event stream, as a browser is one: it keeps every event and waits for the one a test asks for.
import { onTestFinished } from 'vitest';
import { type StreamEvent, streamEventSchema } from '../../shared/api/stream.ts';

type Named<E extends StreamEvent['event']> = Extract<StreamEvent, { event: E }>;

export interface StreamReader {
  readonly headers: Headers;
  /** Every event so far. */
  readonly events: readonly StreamEvent[];
  /** The text as it came. */
  text(): string;
  /** The first event of this name that fits and has not been handed out yet; rejects when the stream ends without it. */
  next<E extends StreamEvent['event']>(name: E, fits?: (event: Named<E>) => boolean): Promise<Named<E>>;
  /** Resolves when the other side has ended the stream. */
  readonly ended: Promise<void>;
}

/** Opens `GET /stream`; the test that calls it closes it when it ends. */
export async function readStream(url: string, headers: Record<string, string>): Promise<StreamReader> {
  const stop = new AbortController();
  onTestFinished(() => stop.abort());
  const answer = await fetch(`${url}/api/v1/stream`, { headers, signal: stop.signal });
  if (answer.status !== 200 || answer.body === null) throw new Error(`the stream answered ${answer.status}`);
  const events: StreamEvent[] = [];
  const handedOut = new Set<StreamEvent>();
  let text = '';
  let isOver = false;
  let wake = Promise.withResolvers<void>();
  const take = async (body: ReadableStream<Uint8Array>) => {
    const decoder = new TextDecoder();
    let rest = '';
    for await (const chunk of body) {
      const more = decoder.decode(chunk, { stream: true });
      text += more;
      const blocks = (rest + more).split('\n\n');
      rest = blocks.pop() ?? '';
      events.push(...blocks.flatMap(parseBlock));
      wake.resolve();
      wake = Promise.withResolvers<void>();
    }
  };
  const ended = take(answer.body)
    .catch((error: unknown) => {
      // A connection that is cut ends the stream as well as one that is closed.
      if (!(error instanceof TypeError) && !stop.signal.aborted) throw error;
    })
    .finally(() => {
      isOver = true;
      wake.resolve();
    });
  return {
    headers: answer.headers,
    events,
    text: () => text,
    ended,
    async next(name, fits = () => true) {
      for (;;) {
        const found = events.find((one) => !handedOut.has(one) && one.event === name && fits(one as never));
        if (found !== undefined) {
          handedOut.add(found);
          return found as never;
        }
        if (isOver) throw new Error(`the stream ended without such an event ${name}`);
        await wake.promise;
      }
    },
  };
}

function parseBlock(block: string): StreamEvent[] {
  const lines = block.split('\n');
  const name = lines.find((line) => line.startsWith('event: '))?.slice('event: '.length);
  const data = lines.find((line) => line.startsWith('data: '))?.slice('data: '.length);
  if (name === undefined || data === undefined) return [];
  const event = streamEventSchema.parse(JSON.parse(data));
  if (event.event !== name) throw new Error(`an event ${name} says that it is ${event.event}`);
  return [event];
}
