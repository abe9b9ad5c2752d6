// The process: settings in, one line on stdout when it listens, a clean end on a signal, one clear line and exit 2 when it cannot start.
import { flushCompileCache } from 'node:module';
import { Problem } from '../shared/problem.ts';
import { systemClock } from './clock.ts';
import { openLog } from './log.ts';
import { stopOnSignals } from './process.ts';
import { readSettings } from './settings.ts';

async function main(): Promise<void> {
  const settings = readSettings(process.env);
  const log = openLog(settings.logLevel);
  // Not before the settings are read: whoever mistyped one hears of it at once.
  const { openApp } = await import('./app.ts');
  const app = await openApp({ settings, clock: systemClock, log });
  stopOnSignals(app, log);
  process.stdout.write(`Takewell is ready at ${app.url}\n`);
  // Now, not at the end: what is killed or loses its power comes back as fast.
  flushCompileCache();
  if (app.setupUrl !== null)
    log.info({ setupUrl: app.setupUrl }, 'open this address to make the first manager account');
}

main().catch((error: unknown) => {
  const text =
    error instanceof Problem
      ? error.message
      : `Takewell cannot start: ${error instanceof Error ? error.stack : String(error)}`;
  process.stderr.write(`${text}\n`);
  process.exitCode = 2;
});
