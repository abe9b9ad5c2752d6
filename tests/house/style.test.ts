// What the house style asks of every file: a head comment, a telling name, a bearable length.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const sources = ['shared', 'server', 'web'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.startsWith('dist'))
    .map((name) => join(folder, name)),
);
const text = (file: string) => readFileSync(join(root, file), 'utf8');

/** Tables of values and of words, and the wiring: long because there is much of one thing. */
const tables = ['shared/healing/standard-profiles.ts', 'server/store/store.ts'];

describe('house style', () => {
  it('finds the files it judges', () => {
    expect(sources.length).toBeGreaterThan(150);
  });

  it('every file says in its first line what it is for', () => {
    expect(sources.filter((file) => !/^(\/\/ |\/\*\* ?)/.test(text(file)))).toEqual([]);
  });

  it('no file is named for being a drawer', () => {
    const drawers = /^(utils?|helpers?|common|misc|manager)\.|-(utils?|helpers?|manager)\./;
    expect(sources.filter((file) => drawers.test(basename(file)) && file !== 'shared/api/common.ts')).toEqual([]);
  });

  it('names are kebab-case', () => {
    expect(sources.filter((file) => !/^[a-z0-9.-]+$/.test(basename(file)))).toEqual([]);
  });

  it('no file is longer than 300 lines, tables excepted', () => {
    const long = sources.filter((file) => text(file).split('\n').length > 300 && !tables.includes(file));
    expect(long).toEqual([]);
  });

  it('nothing is left for later or talked around the checks', () => {
    const soft = /\bTODO\b|\bFIXME\b|@ts-(ignore|nocheck|expect-error)/;
    expect(sources.filter((file) => soft.test(text(file)))).toEqual([]);
    expect(sources.filter((file) => /\bas any\b|: any\b/.test(codeOf(text(file))))).toEqual([]);
  });

  it('an exception from the lint rules says why', () => {
    const unexplained = /biome-ignore [^:\n]+:?\s*.{0,19}$/m;
    expect(sources.filter((file) => unexplained.test(text(file)))).toEqual([]);
  });

  it('no catch is empty', () => {
    expect(
      sources.filter((file) =>
        /catch\s*(\([^)]*\))?\s*\{\s*\}|\.catch\(\(\)\s*=>\s*(\{\s*\}|undefined)\)/.test(text(file)),
      ),
    ).toEqual([]);
  });
});

/** The text without comments. */
function codeOf(source: string): string {
  return source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');
}
