// Where the browser of the tests is: the one that comes from npm, the same on every machine and a fifth lighter than a whole Chromium, unpacked once
// into the temporary folder; else a Chromium of the system.
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import npmChromium, { inflate } from '@sparticuz/chromium';

export interface FoundChromium {
  readonly executablePath: string;
  /** More environment for its process. */
  readonly environment: Record<string, string>;
}

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const npmFolder = join(import.meta.dirname, '../../node_modules/@sparticuz/chromium/bin');

/** The browser; throws an Error of one sentence when there is none for this machine. */
export async function findChromium(): Promise<FoundChromium> {
  if (process.platform === 'linux' && process.arch === 'x64' && existsSync(npmFolder)) return unpackFromNpm();
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const executablePath = names.flatMap((name) => folders.map((folder) => join(folder, name))).find(existsSync);
  if (executablePath === undefined)
    throw new Error('There is no browser for the tests: install chromium or google-chrome, and run them again.');
  return { executablePath, environment: {} };
}

async function unpackFromNpm(): Promise<FoundChromium> {
  // The package brings the libraries that a bare system lacks, but unpacks them by itself on one cloud only.
  const libraries = join(tmpdir(), 'al2023', 'lib');
  if (!existsSync(libraries)) await inflate(join(npmFolder, 'al2023.tar.br'));
  const executablePath = await npmChromium.executablePath(npmFolder);
  return { executablePath, environment: { LD_LIBRARY_PATH: libraries, FONTCONFIG_PATH: join(tmpdir(), 'fonts') } };
}
