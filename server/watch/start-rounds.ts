// Lets the watch go round by the clock of the machine.
import type { Logger } from 'pino';
import type { Clock } from '../clock.ts';

/**
 * Calls `tick` every so many milliseconds (0 = never) with the time since it was called last: much longer when the machine slept. The result stops it
 * and waits for the round under way.
 */
export function startRounds(
  tick: (sinceLastMs: number) => Promise<void>,
  everyMs: number,
  { clock, log }: { readonly clock: Clock; readonly log: Logger },
): () => Promise<void> {
  if (everyMs === 0) return async () => undefined;
  let running: Promise<void> = Promise.resolve();
  let lastMs = clock.steadyMs();
  // A round that cannot be stored is tried again by the next; health says so meanwhile.
  const timer = setInterval(() => {
    const steadyMs = clock.steadyMs();
    running = tick(steadyMs - lastMs).catch((error: unknown) =>
      log.error({ err: error }, 'a round of the watch failed'),
    );
    lastMs = steadyMs;
  }, everyMs);
  return async () => {
    clearInterval(timer);
    await running;
  };
}
