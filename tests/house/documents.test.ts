// The documents say what is so: the one-hop map points at things that exist, every setting and dependency is explained, links lead somewhere.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { settingNames } from '../../server/settings.ts';

const root = resolve(import.meta.dirname, '../..');
const read = (file: string) => readFileSync(join(root, file), 'utf8');
const developers = read('DEVELOPERS.md');
const readme = read('README.md');
const manifest = JSON.parse(read('package.json')) as {
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
  optionalDependencies: Record<string, string>;
  scripts: Record<string, string>;
};

describe('DEVELOPERS.md', () => {
  const map = developers.slice(
    developers.indexOf('## One-hop map'),
    developers.indexOf('\n## ', developers.indexOf('## One-hop map') + 5),
  );
  const rows = map.split('\n').filter((line) => line.startsWith('| ') && line.includes('`'));

  it('has a one-hop map that answers the first questions of a newcomer', () => {
    expect(rows.length).toBeGreaterThanOrEqual(12);
    for (const question of ['When a reading arrives', 'heat limit', 'alert sent']) expect(map).toContain(question);
  });

  it.each(rows.map((row) => [row.split('|')[1]?.trim() ?? '', row]))(
    '%s: the path exists and the symbol is exported there',
    (_, row) => {
      const path = /`((?:shared|server|web|tests|firmware-notes)\/[^`]+)`/.exec(row)?.[1] ?? 'none';
      expect(existsSync(join(root, path)), path).toBe(true);
      const symbol = /→ `(\w+)(?:\(\))?`/.exec(row)?.[1];
      if (symbol !== undefined)
        expect(read(path)).toMatch(
          new RegExp(`export (async )?(function\\*?|const|interface|type|class) ${symbol}\\b`),
        );
    },
  );

  it('explains every runtime dependency in a line', () => {
    const names = [...Object.keys(manifest.dependencies), ...Object.keys(manifest.optionalDependencies)];
    expect(names.filter((name) => !developers.includes(`\`${name}\``))).toEqual([]);
  });
});

describe('README.md', () => {
  it('starts with the job in one paragraph', () => {
    const [title, , paragraph] = readme.split('\n');
    expect(title).toBe('# Takewell');
    expect(paragraph?.length).toBeGreaterThan(200);
  });

  it('names every setting', () => {
    expect(settingNames.length).toBeGreaterThan(10);
    expect(settingNames.filter((name) => !readme.includes(`\`${name}\``))).toEqual([]);
  });

  it('says what it will not do, and the cautions', () => {
    expect(readme).toContain('## What it will not do');
    for (const word of ['Legionella', 'electrician', 'not a safety system']) expect(readme).toContain(word);
  });

  it.each([...readme.matchAll(/npm run ([a-z:-]+)/g)].map(([, name]) => [name ?? '']))(
    'names a script that exists: %s',
    (name) => {
      expect(Object.keys(manifest.scripts)).toContain(name);
    },
  );
});

describe('package.json', () => {
  it('pins exact versions', () => {
    const all = { ...manifest.dependencies, ...manifest.devDependencies, ...manifest.optionalDependencies };
    expect(Object.entries(all).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  it('runs no script of ours during install', () => {
    expect(Object.keys(manifest.scripts).filter((name) => /install|prepare/.test(name))).toEqual([]);
  });
});

describe('links', () => {
  const pages = [
    'README.md',
    'DEVELOPERS.md',
    ...readdirSync(join(root, 'firmware-notes')).map((name) => `firmware-notes/${name}`),
  ];
  const links = pages.flatMap((page) =>
    [...read(page).matchAll(/\]\((?!https?:|mailto:|#)([^)#\s]+)/g)].map(([, target]) => [page, target ?? '']),
  );

  it.each(links)('%s → %s leads somewhere', (page, target) => {
    expect(existsSync(resolve(root, page, '..', target))).toBe(true);
  });
});
