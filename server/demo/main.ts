// `npm run demo`: the service on a throw-away data folder with an invented nursery in it. The folder goes when the process ends.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Problem } from '../../shared/problem.ts';
import { systemClock } from '../clock.ts';
import { openLog } from '../log.ts';
import { stopOnSignals } from '../process.ts';
import { readDemoSettings } from './demo-settings.ts';
import { type Demo, openDemo } from './open-demo.ts';
import { DEMO_PASSWORD } from './store-nursery.ts';

async function main(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'takewell-demo-'));
  const remove = () => rm(folder, { recursive: true, force: true });
  try {
    const settings = await readDemoSettings(process.env, folder);
    const log = openLog(settings.logLevel);
    const opening = openDemo({ settings, clock: systemClock, log, isRunning: true });
    stopOnSignals({ close: () => opening.then((demo) => demo.close()).finally(remove) }, log);
    process.stdout.write(greet(await opening));
  } catch (error) {
    await remove();
    throw error;
  }
}

function greet({ app, nursery }: Demo): string {
  const manager = nursery.people.find(({ role }) => role === 'manager')?.name ?? '';
  const hot = nursery.chambers.find(({ scenario }) => scenario.kind === 'overheat')?.name ?? '';
  const lines = [
    `Takewell is ready at ${app.url}`,
    `Sign in as "${manager}" with the password "${DEMO_PASSWORD}". Everything in it is invented and gone when you stop it with Ctrl-C.`,
    `Within two minutes ${hot} gets too hot and alarms: acknowledge it, log an opened gap and watch it cool.`,
    `Then download the record of its batch from the page of ${hot}.`,
  ];
  return `${lines.join('\n')}\n`;
}

main().catch((error: unknown) => {
  const text =
    error instanceof Problem
      ? error.message
      : `The demo cannot start: ${error instanceof Error ? error.stack : String(error)}`;
  process.stderr.write(`${text}\n`);
  process.exitCode = 2;
});
