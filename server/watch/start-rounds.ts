// Lets the watch go round by the clock of the machine.
import type { Logger } from 'pino';

/** Calls `tick` every so many milliseconds (0 = never); the result stops it and waits for the round under way. */
export function startRounds(tick: () => Promise<void>, everyMs: number, log: Logger): () => Promise<void> {
  if (everyMs === 0) return async () => undefined;
  let running: Promise<void> = Promise.resolve();
  // A round that cannot be stored is tried again by the next; health says so meanwhile.
  const timer = setInterval(() => {
    running = tick().catch((error: unknown) => log.error({ err: error }, 'a round of the watch failed'));
  }, everyMs);
  return async () => {
    clearInterval(timer);
    await running;
  };
}
