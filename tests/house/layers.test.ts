// The layers of the house: who may import whom, and what shared code must never reach for.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

interface Import {
  readonly from: string;
  readonly to: string;
  readonly isTypeOnly: boolean;
  /** Asked for while the program runs, not with the file itself. */
  readonly isLater: boolean;
}

function filesOf(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.startsWith('dist') && !name.includes('node_modules'))
    .map((name) => join(folder, name));
}

/** Every import and re-export of a file; paths of our own as seen from the root, packages by their name. */
function importsOf(file: string): Import[] {
  const text = readFileSync(join(root, file), 'utf8');
  const pattern = /^\s*(?:import|export)\s+(type\s+)?(?:[^'";]*?\sfrom\s+)?'([^']+)'|import\('([^']+)'\)/gm;
  return [...text.matchAll(pattern)].map(([, isType, fixed, dynamic]) => {
    const target = fixed ?? dynamic ?? '';
    const to = target.startsWith('.') ? relative(root, resolve(root, dirname(file), target)) : target;
    return { from: file, to, isTypeOnly: isType !== undefined, isLater: dynamic !== undefined };
  });
}

const say = ({ from, to }: Pick<Import, 'from' | 'to'>) => `${from} → ${to}`;
const isInside = (path: string, ...folders: string[]) => folders.some((folder) => path.startsWith(`${folder}/`));

const shared = filesOf('shared').flatMap(importsOf);
const server = filesOf('server').flatMap(importsOf);
const web = filesOf('web').flatMap(importsOf);

describe('layers', () => {
  it('finds the imports it judges', () => {
    expect(shared.length).toBeGreaterThan(100);
    expect(server.length).toBeGreaterThan(200);
    expect(web.length).toBeGreaterThan(50);
  });

  it('shared imports shared, zod and the polyfill of Temporal, nothing else', () => {
    const allowed = ['zod', 'temporal-polyfill'];
    expect(shared.filter(({ to }) => !isInside(to, 'shared') && !allowed.includes(to)).map(say)).toEqual([]);
  });

  it('server imports no page', () => {
    expect(server.filter(({ to }) => isInside(to, 'web', 'tests')).map(say)).toEqual([]);
  });

  it('web imports shared, its own files and the packages of the browser', () => {
    const drawing = ['uplot', 'uplot/dist/uPlot.min.css', 'lean-qr', 'lean-qr/extras/svg'];
    const allowed = ['preact', 'preact/hooks', '@preact/signals', ...drawing, 'vite'];
    const foreign = web.filter(
      ({ to }) => !isInside(to, 'shared', 'web') && !allowed.includes(to) && !to.startsWith('node:'),
    );
    expect(foreign.map(say)).toEqual([]);
  });

  it('the browser carries no Node module and no zod', () => {
    const tools = ['web/vite.config.ts', 'web/build-if-stale.ts', 'web/pack-files.ts'];
    const values = web.filter(({ from, isTypeOnly }) => !tools.includes(from) && !isTypeOnly);
    expect(values.filter(({ to }) => to.startsWith('node:') || isInside(to, 'shared/api')).map(say)).toEqual([]);
  });

  it('what is loaded at the start uses no words of late pages, which are not there yet', () => {
    const users = web.filter(
      ({ from, to, isTypeOnly }) => to === 'web/late-strings.ts' && !isTypeOnly && from !== 'web/load-words.ts',
    );
    expect(users.length).toBeGreaterThan(30);
    const atStart = loadedWith('web/app.tsx');
    expect(atStart.size).toBeGreaterThan(60);
    expect(users.filter(({ from }) => atStart.has(from)).map(say)).toEqual([]);
  });

  it('a catalogue is loaded by its language only', () => {
    const loaders = ['web/load-words.ts'];
    const uses = web.filter(({ to, isTypeOnly }) => isInside(to, 'web/words') && !isTypeOnly);
    expect(uses.filter(({ from }) => !isInside(from, 'web/words') && !loaders.includes(from)).map(say)).toEqual([]);
  });
});

describe('adapters', () => {
  const adapters = ['server/http', 'server/ingest', 'server/notify', 'server/record', 'server/store'];

  it.each(adapters)('%s imports no other adapter; they meet in app.ts', (own) => {
    const others = adapters.filter((one) => one !== own);
    // The store's port is what everybody programs against; it is types only.
    const crossing = server.filter(
      ({ from, to }) => isInside(from, own) && isInside(to, ...others) && to !== 'server/store/store.ts',
    );
    expect(crossing.map(say)).toEqual([]);
  });

  it.each([
    ['better-sqlite3', 'server/store/'],
    ['mqtt', 'server/ingest/'],
    ['aedes', 'server/ingest/'],
    ['web-push', 'server/notify/'],
    ['fastify', 'server/http/'],
    ['uplot', 'web/strip/'],
    ['@node-rs/argon2', 'server/people/'],
    ['pino', 'server/log.ts'],
  ])('%s is used in %s only', (name, place) => {
    // The demo's nodes and the simulated node of the operator are MQTT clients like any node in a tent.
    const exempt = name === 'mqtt' ? ['server/demo/', 'server/cli/'] : [];
    const users = [...server, ...web, ...shared].filter(({ to, isTypeOnly }) => to === name && !isTypeOnly);
    expect(users.length).toBeGreaterThan(0);
    expect(users.filter(({ from }) => ![place, ...exempt].some((one) => from.startsWith(one))).map(say)).toEqual([]);
  });
});

describe('purity of shared', () => {
  it.each([
    ['the clock', /\bDate\.now\(|\bnew Date\(\)|\bTemporal\.Now\b|\bperformance\.now\(/],
    ['chance', /\bMath\.random\(|\bcrypto\./],
    ['timers', /\bsetTimeout\(|\bsetInterval\(/],
    ['the process', /\bprocess\.|\bglobalThis\b/],
  ])('never reaches for %s', (_, pattern) => {
    const offenders = filesOf('shared').filter((file) => pattern.test(codeOf(file)));
    expect(offenders).toEqual([]);
  });

  it('only the settings read the environment', () => {
    const readers = filesOf('server').filter((file) => /process\.env\b/.test(codeOf(file)));
    const allowed = ['server/main.ts', 'server/demo/main.ts', 'server/cli/main.ts'];
    // Entry files hand the environment to readSettings; nobody looks a variable up by himself.
    expect(readers.filter((file) => !allowed.includes(file) && !file.startsWith('server/cli/'))).toEqual([]);
    expect(filesOf('server').filter((file) => /process\.env(\.|\[)/.test(codeOf(file)))).toEqual([]);
  });
});

/** The files of the page that come with `file`, itself included. */
function loadedWith(file: string, found = new Set<string>()): ReadonlySet<string> {
  if (found.has(file)) return found;
  found.add(file);
  const own = web.filter(({ from, isTypeOnly, isLater }) => from === file && !isTypeOnly && !isLater);
  for (const { to } of own) loadedWith(to, found);
  return found;
}

/** The text without comments, so that a comment may name what the code must not do. */
function codeOf(file: string): string {
  return readFileSync(join(root, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\/\/.*$/gm, '');
}
