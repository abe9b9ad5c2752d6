// The built page: small enough for a phone in a greenhouse, and fit for the server's content policy.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

const dist = new URL('../../web/dist', import.meta.url).pathname;
const assets = readdirSync(join(dist, 'assets')).filter((name) => /\.(js|css)$/.test(name));
const textOf = (name: string) => readFileSync(join(dist, name), 'utf8');

/** What a browser asks for before it shows anything: the page's script, what that imports, and its style. */
const firstLoad = [...textOf('index.html').matchAll(/(?:src|href)="\/(assets\/[^"]+\.(?:js|css))"/g)].map(
  ([, name]) => name ?? '',
);

test('script and style of the first load are at most 110 kB gzip', () => {
  const bytes = firstLoad.map((name) => gzipSync(readFileSync(join(dist, name))).length);
  expect(firstLoad.filter((name) => name.endsWith('.js')).length).toBeGreaterThanOrEqual(1);
  expect(firstLoad.filter((name) => name.endsWith('.css')).length).toBeGreaterThanOrEqual(1);
  expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(110_000);
});

test('the page has no inline script, no inline style and no address elsewhere', () => {
  const page = textOf('index.html');
  expect(page).not.toMatch(/<script(?![^>]*\ssrc=)/);
  expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
  expect(page).not.toMatch(/(?:src|href)="(?:https?:)?\/\//);
});

test('nothing tells of the machine that built it', () => {
  for (const name of assets) expect(textOf(join('assets', name))).not.toMatch(/fileName:|\/web\/(?:parts|pages)\//);
});

test('no style asks for a data: address', () => {
  for (const name of assets.filter((asset) => asset.endsWith('.css')))
    expect(textOf(join('assets', name))).not.toMatch(/url\(["']?data:/);
});

test('the checks of the server’s bodies stay on the server', () => {
  for (const name of assets) expect(textOf(join('assets', name))).not.toMatch(/ZodError|Temporal\.Instant/);
});

test('the service worker stands alone at its fixed address', () => {
  const worker = textOf('service-worker.js');
  expect(worker).not.toMatch(/^\s*import[\s{]/m);
  expect(worker).toContain('showNotification');
});

test('the manifest’s icons exist', () => {
  const { icons } = JSON.parse(textOf('manifest.webmanifest')) as { icons: { src: string }[] };
  expect(icons.length).toBeGreaterThan(2);
  for (const { src } of icons) expect(readFileSync(join(dist, src)).length).toBeGreaterThan(0);
});
