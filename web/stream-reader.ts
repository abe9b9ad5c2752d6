// Reads GET /api/v1/stream for as long as the page stands: tries again for ever, and notices a connection that died without a word.
import type { StreamEvent } from '../shared/api/stream.ts';
import { MINUTE_MS, SECOND_MS } from '../shared/units.ts';
import { tick } from './clock.ts';
import { connection, loadEverything, takeEvent } from './live.ts';

const reopenMs = 5 * SECOND_MS;
/** Three pulses of the service: a connection that stays silent longer is dead, whatever the browser says. */
const deadMs = 65 * SECOND_MS;
const watchMs = 5 * SECOND_MS;
const names = [
  'hello',
  'pulse',
  'climate',
  'alarm',
  'batch',
  'reach',
  'probe',
] as const satisfies readonly StreamEvent['event'][];

let source: EventSource | undefined;
let reopening: ReturnType<typeof setTimeout> | undefined;
/** By the device's own clock, which goes on while a tab sleeps. */
let lastWordMs = 0;

function isStreamEvent(value: unknown): value is StreamEvent {
  return typeof value === 'object' && value !== null && 'event' in value;
}

function takeMessage(message: MessageEvent<string>): void {
  lastWordMs = Date.now();
  const parsed: unknown = JSON.parse(message.data);
  if (isStreamEvent(parsed)) takeEvent(parsed);
}

function lose(): void {
  if (connection.peek() !== 'lost') connection.value = 'lost';
  // The browser tries again by itself unless the answer was not a stream at all.
  if (source?.readyState !== EventSource.CLOSED) return;
  clearTimeout(reopening);
  reopening = setTimeout(openStream, reopenMs);
}

function openStream(): void {
  clearTimeout(reopening);
  source?.close();
  lastWordMs = Date.now();
  source = new EventSource('/api/v1/stream');
  for (const name of names) source.addEventListener(name, takeMessage);
  source.addEventListener('error', lose);
}

/** A phone that slept, a cable pulled out: the browser may go on believing in a connection that nobody speaks on any more. */
function reviveIfDead(): void {
  if (Date.now() - lastWordMs < deadMs) return;
  connection.value = 'lost';
  openStream();
}

/** The network is back, or somebody looks again: no waiting for the next try, and no old time beside an old value. */
function lookAgain(): void {
  if (document.visibilityState !== 'visible') return;
  tick();
  reviveIfDead();
  if (connection.peek() === 'lost') openStream();
  void loadEverything();
}

/** Starts listening; a round of everything each minute catches what an event did not say. Returns how to stop. */
export function startLive(): () => void {
  openStream();
  void loadEverything();
  const round = setInterval(() => {
    if (document.visibilityState === 'visible') void loadEverything();
  }, MINUTE_MS);
  const watch = setInterval(reviveIfDead, watchMs);
  document.addEventListener('visibilitychange', lookAgain);
  addEventListener('online', lookAgain);
  addEventListener('pageshow', lookAgain);
  return () => {
    clearInterval(round);
    clearInterval(watch);
    clearTimeout(reopening);
    document.removeEventListener('visibilitychange', lookAgain);
    removeEventListener('online', lookAgain);
    removeEventListener('pageshow', lookAgain);
    source?.close();
  };
}
