// Builds the web page before a start, only when a source is newer than the last build.
// It is run by plain Node 24 and says nothing unless the build fails.
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const builtPage = join(root, 'web/dist/index.html');

function newestChangeMs(path: string): number {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return 0;
  if (!found.isDirectory()) return found.mtimeMs;
  const names = readdirSync(path).filter((name) => name !== 'dist');
  return names.reduce((newest, name) => Math.max(newest, newestChangeMs(join(path, name))), found.mtimeMs);
}

function isStale(): boolean {
  const builtMs = statSync(builtPage, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return ['web', 'shared', 'package-lock.json'].some((name) => newestChangeMs(join(root, name)) > builtMs);
}

async function buildPage(): Promise<void> {
  const { build } = await import('vite');
  await build({ configFile: join(root, 'web/vite.config.ts'), logLevel: 'silent' });
}

if (isStale()) {
  try {
    await buildPage();
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('\n')[0] : String(error);
    process.stderr.write(`The web page could not be built: ${reason}. Run "npm ci" and start again.\n`);
    process.exit(1);
  }
}
