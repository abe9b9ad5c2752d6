// Ends the process cleanly: what is in hand is stored, connections are closed, then it goes; in ten seconds at the latest.
import type { Logger } from 'pino';
import { SECOND_MS } from '../shared/units.ts';

const LONGEST_GOODBYE_MS = 10 * SECOND_MS;

export function stopOnSignals(app: { close(): Promise<void> }, log: Logger): void {
  let isStopping = false;
  const stop = (signal: string) => {
    if (isStopping) return;
    isStopping = true;
    log.info({ signal }, 'stopping');
    setTimeout(() => process.exit(1), LONGEST_GOODBYE_MS).unref();
    app.close().then(
      () => process.exit(0),
      (error: unknown) => {
        log.error({ err: error }, 'stopping failed');
        process.exit(1);
      },
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => stop(signal));
}
