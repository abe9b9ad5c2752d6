// The files that a browser asks for before it shows anything: the script of the page, what that imports, and its style.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const dist = join(import.meta.dirname, '../../web/dist');

export interface LoadedFile {
  readonly kind: 'js' | 'css';
  readonly text: Buffer;
}

export function firstLoad(): readonly LoadedFile[] {
  const page = readFileSync(join(dist, 'index.html'), 'utf8');
  return [...page.matchAll(/(?:src|href)="\/(assets\/[^"]+\.(js|css))"/g)].map(([, name = '', kind]) => ({
    kind: kind === 'js' ? 'js' : 'css',
    text: readFileSync(join(dist, name)),
  }));
}
