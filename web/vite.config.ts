// How the web page is built: hashed assets, no inline script or style, and the service worker at an unhashed address.
import { createHash } from 'node:crypto';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, type Plugin, type Rolldown } from 'vite';
import { type Language, languages } from '../shared/languages.ts';
import { packFiles } from './pack-files.ts';

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const target = 'es2022';

/** Where the page is built to; the worker goes beside it. */
let outDir = here('dist');
/** What the worker keeps for when there is no connection: for everybody, and of the words those of the reader. */
let shellFiles: readonly string[] = [];
let languageFiles: Partial<Record<Language, readonly string[]>> = {};

/** The language that a built file is loaded for (`load-words.ts`); undefined for a file that any reader may need. */
function languageOf(file: Rolldown.OutputAsset | Rolldown.OutputChunk): Language | undefined {
  if (file.type !== 'chunk' || !file.isDynamicEntry) return undefined;
  return languages.find((one) => file.facadeModuleId?.startsWith(here(`words/${one}/`)) === true);
}

/** The worker is one plain script of its own: not every browser runs a worker that imports. */
const serviceWorker: Plugin = {
  name: 'takewell-service-worker',
  apply: 'build',
  configResolved(config) {
    outDir = resolve(config.root, config.build.outDir);
  },
  writeBundle(_options, bundle) {
    const files = Object.entries(bundle).filter(([name]) => name.startsWith('assets/'));
    const of = (wanted: Language | undefined) =>
      files
        .filter(([, file]) => languageOf(file) === wanted)
        .map(([name]) => `/${name}`)
        .sort();
    shellFiles = of(undefined);
    languageFiles = Object.fromEntries(languages.map((one) => [one, of(one)]));
  },
  async closeBundle() {
    const all = [...shellFiles, ...Object.values(languageFiles).flat()];
    const version = createHash('sha256').update(all.join('\n')).digest('hex').slice(0, 12);
    await build({
      configFile: false,
      root: here('.'),
      publicDir: false,
      logLevel: 'warn',
      define: {
        SHELL_FILES: JSON.stringify(shellFiles),
        LANGUAGE_FILES: JSON.stringify(languageFiles),
        SHELL_VERSION: JSON.stringify(version),
      },
      build: {
        ...{ outDir, target, emptyOutDir: false },
        rolldownOptions: {
          input: { 'service-worker': here('service-worker.ts') },
          output: { entryFileNames: '[name].js', format: 'iife' },
        },
      },
    });
    packFiles(outDir);
  },
};

/** The page itself is fetched while its words are: main.ts asks for both, one after the other. */
const fetchAhead: Plugin = {
  name: 'takewell-fetch-ahead',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler(_page, { bundle = {} }) {
      const app = Object.values(bundle).find((one) => one.type === 'chunk' && one.facadeModuleId === here('app.tsx'));
      const files = app?.type === 'chunk' ? [app.fileName, ...app.imports] : [];
      const styles = app?.type === 'chunk' ? [...(app.viteMetadata?.importedCss ?? [])] : [];
      return [
        ...files.map((file) => ({ tag: 'link', attrs: { rel: 'modulepreload', crossorigin: true, href: `/${file}` } })),
        ...styles.map((file) => ({ tag: 'link', attrs: { rel: 'stylesheet', crossorigin: true, href: `/${file}` } })),
      ];
    },
  },
};

export default defineConfig({
  root: here('.'),
  publicDir: here('public'),
  // Said here, since a build under tests would else be one for development, with the paths of this machine in it.
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact', development: false } },
  plugins: [fetchAhead, serviceWorker],
  build: {
    ...{ outDir, target, emptyOutDir: true },
    // The server's policy is default-src 'self': a data: address would be refused.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { input: { main: here('index.html') } },
  },
});
