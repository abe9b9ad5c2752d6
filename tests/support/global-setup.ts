// Runs once before all tests: the system has what they need, the browser is unpacked, and the web page is built from the sources as they are.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { findChromium } from './find-chromium.ts';

const root = join(import.meta.dirname, '../..');

/** Throws when something is missing that cannot be had; the command that failed has said what on stderr. */
export async function setup(): Promise<void> {
  run('bash', join(import.meta.dirname, 'prerequisites.sh'));
  // Here once, so that test files that run side by side do not unpack it into each other's hands.
  await findChromium();
  run(process.execPath, join(root, 'web/build-if-stale.ts'));
}

function run(command: string, script: string): void {
  execFileSync(command, [script], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
}
