// The operator's commands: finds the one that is asked for, runs it, and turns its outcome into an exit code and at most one line on stderr.
// It imports nothing that an older Node could not load before the version has been looked at.
import process from 'node:process';
import { Problem } from '../../shared/problem.ts';
import { systemClock } from '../clock.ts';
import type { ExitCode, Terminal } from './command.ts';

const OLDEST_NODE = 24;

async function main(): Promise<ExitCode> {
  if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE) {
    complain(
      `Takewell needs Node ${OLDEST_NODE} or newer; this is ${process.version}. Run it with "npm run takewell".`,
    );
    return 2;
  }
  const { runCommand } = await import('./run-command.ts');
  return runCommand(process.argv.slice(2), terminal(), complain);
}

function terminal(): Terminal {
  return {
    env: process.env,
    nowMs: systemClock.nowMs(),
    stdin: process.stdin,
    write,
    ask: (text) => process.stderr.write(text),
    isWatched: process.stderr.isTTY === true,
  };
}

function write(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(text, (cause) => {
      if (cause === null || cause === undefined) resolve();
      else
        reject(Problem.forOperator('unavailable', `Standard output cannot be written: ${cause.message}.`, { cause }));
    });
  });
}

function complain(line: string): void {
  process.stderr.write(`${line}\n`);
}

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // A reader that has seen enough (`| head`) is no fault of ours; of anything else the write itself tells.
  if (error.code === 'EPIPE') process.exit(0);
});
process.exitCode = await main();
