// Migrations on real files: from nothing, from each earlier version, broken off in the middle, and on databases that are not ours to change.
import { copyFileSync, existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Migration, migrate, readMigrations } from '../../../server/store/migrate.ts';
import { openDatabase } from '../../../server/store/open-database.ts';
import { channelsSchema, noChannels } from '../../../shared/api/channels.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';
import { webhookTo } from '../../support/webhook-receiver.ts';

const shipped = readMigrations();

function migration(number: number, sql: string): Migration {
  return { number, name: `${String(number).padStart(3, '0')}-test.sql`, sql, hash: `hash of ${sql}` };
}

const one = migration(1, 'CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID');
const two = migration(2, 'CREATE TABLE second (id INTEGER PRIMARY KEY) STRICT; INSERT INTO second VALUES (7)');

async function makeFile(): Promise<string> {
  return join(await makeTestFolder(), 'takewell.sqlite');
}

/** Opens a file with these migrations, as the service does. */
function open(file: string, migrations: readonly Migration[], nowMs = 1) {
  const db = openDatabase({ file, nowMs, migrations });
  onTestFinished(() => void db.close());
  return db;
}

/** Every table and index with its definition, and the bookkeeping. */
function describeSchema(db: Database.Database) {
  const parts = db.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY type, name').all();
  return { parts, applied: db.prepare('SELECT number, name, hash FROM migrations ORDER BY number').all() };
}

describe('the shipped migrations', () => {
  it('are numbered from 1 without holes and make a database out of nothing', async () => {
    expect(shipped.map(({ number }) => number)).toEqual(shipped.map((_, index) => index + 1));
    const { applied } = describeSchema(open(await makeFile(), shipped));
    expect(applied).toEqual(shipped.map(({ number, name, hash }) => ({ number, name, hash })));
  });

  it.each(shipped.map(({ name }, index) => [name, index + 1] as const))(
    'lead from a database made up to %s to the same as from nothing, with a backup where there is more to do',
    async (_name, count) => {
      const file = await makeFile();
      open(file, shipped.slice(0, count), 1).close();
      const grown = describeSchema(open(file, shipped, 2));
      expect(grown).toEqual(describeSchema(open(await makeFile(), shipped)));
      expect(existsSync(`${file}.before-2`)).toBe(count < shipped.length);
    },
  );

  it('change nothing when there is nothing to do', async () => {
    const file = await makeFile();
    const before = describeSchema(open(file, shipped));
    expect(describeSchema(open(file, shipped))).toEqual(before);
    expect(readdirSync(join(file, '..')).filter((name) => name.includes('.before-'))).toEqual([]);
  });
});

describe('a migration', () => {
  it('is preceded by a backup of the database as it was', async () => {
    const file = await makeFile();
    open(file, [one], 1).exec("INSERT INTO settings VALUES ('kept', '1')");
    open(file, [one, two], 2);
    const backup = new Database(`${file}.before-2`, { readonly: true });
    onTestFinished(() => void backup.close());
    expect(backup.prepare("SELECT value FROM settings WHERE name = 'kept'").pluck().get()).toBe('1');
    expect(describeSchema(backup).applied).toHaveLength(1);
  });

  it('that fails midway leaves the database as it was before it', async () => {
    const file = await makeFile();
    const before = describeSchema(open(file, [one]));
    const broken = migration(2, `${two.sql}; CREATE TABLE settings (name TEXT)`);
    expect(() => open(file, [one, broken], 2)).toThrow(expect.objectContaining({ code: 'store-unavailable' }));
    expect(describeSchema(open(file, [one]))).toEqual(before);
    expect(describeSchema(open(file, [one, two], 3)).applied).toHaveLength(2);
  });

  it('that fails leaves those before it done', async () => {
    const file = await makeFile();
    const broken = migration(3, 'CREATE TABLE third (id INTEGER PRIMARY KEY); SELECT nothing FROM nowhere');
    expect(() => open(file, [one, two, broken])).toThrow(expect.objectContaining({ code: 'store-unavailable' }));
    const { applied, parts } = describeSchema(open(file, [one, two], 2));
    expect(applied).toHaveLength(2);
    expect(JSON.stringify(parts)).not.toContain('third');
  });

  it('is not tried when the backup cannot be written', async () => {
    const file = await makeFile();
    const db = open(file, [one]);
    const fail = () => {
      throw new Error('no room for the backup');
    };
    expect(() => migrate(db, [one, two], 2, fail)).toThrow('no room for the backup');
    expect(describeSchema(db).applied).toHaveLength(1);
  });
});

describe('a database that is not ours to change', () => {
  it.each([
    ['was written by a newer Takewell', [one, two], [one], 'store-too-new', /newer Takewell \(it has 002-test\.sql\)/],
    [
      'was made with another text of a migration',
      [one],
      [{ ...one, hash: 'other' }, two],
      'store-unavailable',
      /001-test\.sql is not the one this database was made with/,
    ],
    [
      'has a migration between that this program does not have',
      [one, two],
      [one, { ...migration(2, 'SELECT 1'), name: '002-other.sql' }],
      'store-unavailable',
      /002-test\.sql is not the one/,
    ],
  ] as const)('is refused and left as it is when it %s', async (_why, made, known, code, message) => {
    const file = await makeFile();
    const before = describeSchema(open(file, made));
    expect(() => open(file, known, 2)).toThrow(
      expect.objectContaining({ code, message: expect.stringMatching(message) }),
    );
    expect(existsSync(`${file}.before-2`)).toBe(false);
    expect(describeSchema(open(file, made))).toEqual(before);
  });
});

describe('readMigrations', () => {
  it('refuses a folder in which a number is missing or used twice', async () => {
    const folder = await makeTestFolder();
    const first = new URL(`../../../server/store/migrations/${shipped[0]?.name}`, import.meta.url);
    copyFileSync(first, join(folder, '001-first.sql'));
    copyFileSync(first, join(folder, '003-third.sql'));
    const url = pathToFileURL(`${folder}/`);
    expect(() => readMigrations(url)).toThrow('003-third.sql should carry number 2');
    copyFileSync(first, join(folder, '001-second.sql'));
    expect(() => readMigrations(url)).toThrow('001-second.sql should carry number 2');
  });
});

describe('the one webhook there was', () => {
  const number = shipped.findIndex(({ name }) => name.endsWith('-channels.sql'));
  const readChannels = (db: Database.Database) =>
    JSON.parse(String(db.prepare("SELECT value FROM settings WHERE name = 'channels'").pluck().get()));

  it('is the first of the list, with its secret, and its notices follow it', async () => {
    const file = await makeFile();
    const db = open(file, shipped.slice(0, number), 1);
    const webhook = { url: 'https://hooks.example/takewell', secret: 'kept', allowLocal: true };
    db.prepare("INSERT INTO settings VALUES ('channels', ?)").run(JSON.stringify({ webhook }));
    db.exec(`INSERT INTO notices (id, alarm_id, chamber_id, kind, channel, target_id, urgent, decided_ms, next_try_ms)
      VALUES ('n', 'a', 'c', 'raised', 'webhook', 'webhook', 1, 0, 0)`);
    db.close();
    const grown = open(file, shipped, 2);
    expect(channelsSchema.parse(readChannels(grown)).webhooks).toEqual([webhookTo(webhook.url, { secret: 'kept' })]);
    expect(grown.prepare('SELECT target_id FROM notices').pluck().get()).toBe('webhook:first');
  });

  it('that was switched off leaves an empty list', async () => {
    const file = await makeFile();
    open(file, shipped.slice(0, number), 1)
      .exec(`INSERT INTO settings VALUES ('channels', '{"webhook":null}')`)
      .close();
    expect(channelsSchema.parse(readChannels(open(file, shipped, 2)))).toEqual(noChannels);
  });
});
