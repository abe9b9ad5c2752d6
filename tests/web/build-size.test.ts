// The built page: small enough for a phone in a greenhouse, and fit for the server's content policy.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { wordsOf } from '../../shared/words/words-of.ts';

const dist = new URL('../../web/dist', import.meta.url).pathname;
const assets = readdirSync(join(dist, 'assets')).filter((name) => /\.(js|css)$/.test(name));
const textOf = (name: string) => readFileSync(join(dist, name), 'utf8');

/** Of these a reader loads one: at the start, and with the first late page. */
const languageFiles = assets.filter((name) => /^(english|dutch|spanish)-/.test(name));
const lateLanguageFiles = assets.filter((name) => /^late-(english|dutch|spanish)-/.test(name));

/** What a browser asks for before it shows anything: the page's scripts, its style, and the words of one language, here the longest. */
const named = [...textOf('index.html').matchAll(/(?:src|href)="\/(assets\/[^"]+\.(?:js|css))"/g)].map(
  ([, name]) => name ?? '',
);

const gzipped = (name: string) => gzipSync(readFileSync(join(dist, name))).length;

test('script and style of the first load are at most 110 kB gzip in every language', () => {
  expect(languageFiles).toHaveLength(3);
  const firstLoad = [...new Set(named)];
  expect(firstLoad.filter((name) => /english|dutch|spanish/.test(name))).toEqual([]);
  const bytes = [...firstLoad.map(gzipped), Math.max(...languageFiles.map((name) => gzipped(join('assets', name))))];
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
  // Every file of the page can be kept, and those of a language stand in a list of their own.
  for (const name of assets) expect(worker.split(`/${name}`), name).toHaveLength(2);
  const lists = ['en', 'nl', 'es'].map((tag) => new RegExp(`\\b${tag}:\\[(.*?)\\]`).exec(worker)?.[1] ?? '');
  const kept = lists.map((list) =>
    [...list.matchAll(/assets\/([a-z-]+)-[\w-]{8}\.js/g)].map(([, name]) => name).sort(),
  );
  expect(kept).toEqual([
    ['english', 'late-english'],
    ['dutch', 'late-dutch'],
    ['late-spanish', 'spanish'],
  ]);
});

test('the manifest’s icons exist', () => {
  const { icons } = JSON.parse(textOf('manifest.webmanifest')) as { icons: { src: string }[] };
  expect(icons.length).toBeGreaterThan(2);
  for (const { src } of icons) expect(readFileSync(join(dist, src)).length).toBeGreaterThan(0);
});

test('a page carries no language that its reader does not read, and at the start nothing that only late pages say', () => {
  expect(lateLanguageFiles).toHaveLength(3);
  const homes = {
    'How to read the strip': ['english'],
    'Hoe je de strook': ['dutch'],
    'Cómo leer la franja': ['spanish'],
    'Refused messages': ['late-english'],
    'Geweigerde berichten': ['late-dutch'],
    'Mensajes rechazados': ['late-spanish'],
  };
  const holding = (text: string) => assets.filter((name) => textOf(join('assets', name)).includes(text));
  const withoutHash = (files: readonly string[]) => files.map((name) => name.replace(/-[\w-]{8}\.js$/, ''));
  expect(Object.fromEntries(Object.keys(homes).map((text) => [text, withoutHash(holding(text))]))).toEqual(homes);
});

test('what only the service says is in no file of the page', () => {
  const { notices, problems, shapes } = wordsOf.en;
  for (const text of [problems.noSuchBatch, shapes.passwordShort, notices.history.advice])
    expect(assets.filter((name) => textOf(join('assets', name)).includes(text))).toEqual([]);
});
