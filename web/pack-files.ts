// Packs the built files once, so that the service only hands them out: gzip for every browser, brotli for those that take it over https.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';

/** Pictures and fonts are packed already. */
const packable = /\.(?:html|js|css|svg|webmanifest)$/;

/** Writes `name.gz` and `name.br` beside every file of text in a folder and what is under it. */
export function packFiles(folder: string): void {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  for (const name of names.filter((one) => packable.test(one))) {
    const file = join(folder, name);
    const text = readFileSync(file);
    writeFileSync(`${file}.gz`, gzipSync(text, { level: 9 }));
    writeFileSync(`${file}.br`, brotliCompressSync(text));
  }
}
