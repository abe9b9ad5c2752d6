// Where the browser of the tests is: a Chromium of the system, else the one that comes from npm, unpacked once into the temporary folder.
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
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const executablePath = names.flatMap((name) => folders.map((folder) => join(folder, name))).find(existsSync);
  return executablePath === undefined ? unpackFromNpm() : { executablePath, environment: {} };
}

async function unpackFromNpm(): Promise<FoundChromium> {
  if (process.platform !== 'linux' || process.arch !== 'x64' || !existsSync(npmFolder)) {
    throw new Error('There is no browser for the tests: install chromium or google-chrome, and run them again.');
  }
  // The package brings the libraries that a bare system lacks, but unpacks them by itself on one cloud only.
  const libraries = join(tmpdir(), 'al2023', 'lib');
  if (!existsSync(libraries)) await inflate(join(npmFolder, 'al2023.tar.br'));
  const executablePath = await npmChromium.executablePath(npmFolder);
  return { executablePath, environment: { LD_LIBRARY_PATH: libraries, FONTCONFIG_PATH: join(tmpdir(), 'fonts') } };
}
