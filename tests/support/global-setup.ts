// Runs once before all tests: the system has what they need, the web page is built from the sources as they are, and one browser runs for all.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { serveBrowser } from './launch-browser.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the browser listens. */
    browserEndpoint: string;
    /** What a process makes once for several tests: gone when all have run. */
    sharedFolder: string;
  }
}

const root = join(import.meta.dirname, '../..');

/** Throws when something is missing that cannot be had; the command that failed has said what on stderr. Resolves to what ends it all. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  run('bash', join(import.meta.dirname, 'prerequisites.sh'));
  run(process.execPath, join(root, 'web/build-if-stale.ts'));
  const browser = await serveBrowser();
  project.provide('browserEndpoint', browser.wsEndpoint());
  const sharedFolder = mkdtempSync(join(tmpdir(), 'takewell-tests-'));
  project.provide('sharedFolder', sharedFolder);
  return async () => {
    await browser.close();
    rmSync(sharedFolder, { recursive: true, force: true });
  };
}

function run(command: string, script: string): void {
  execFileSync(command, [script], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
}
