// The file behind the store: what it promises by setting is proved by looking, after a write.
import { existsSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openDatabase, openDatabaseToRead } from '../../../server/store/open-database.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';
import { openTestStore, storedReading } from '../../support/open-test-store.ts';

const write = "INSERT OR REPLACE INTO settings (name, value) VALUES ('touched', '1')";

async function openFile(options: { readonly maxPages?: number } = {}) {
  const file = join(await makeTestFolder(), 'data', 'takewell.sqlite');
  const db = openDatabase({ file, nowMs: 0, ...options });
  onTestFinished(() => void db.close());
  return { db, file };
}

describe('openDatabase', () => {
  it('writes through to the disk at every commit: synchronous is FULL after a write, and after opening again', async () => {
    const { db, file } = await openFile();
    db.exec(write);
    expect(db.pragma('synchronous', { simple: true })).toBe(2);
    const again = openDatabase({ file, nowMs: 1 });
    onTestFinished(() => void again.close());
    again.exec(write);
    expect(again.pragma('synchronous', { simple: true })).toBe(2);
  });

  it.each([
    ['journal_mode', 'wal'],
    ['foreign_keys', 1],
    // 2 = incremental: room is given back step by step.
    ['auto_vacuum', 2],
    ['busy_timeout', 5_000],
    ['journal_size_limit', 64 * 1024 * 1024],
  ])('sets %s to %s', async (name, value) => {
    const { db } = await openFile();
    expect(db.pragma(name, { simple: true })).toBe(value);
  });

  it('makes the data folder', async () => {
    expect(existsSync((await openFile()).file)).toBe(true);
  });

  it('says so when the folder cannot be made', async () => {
    const file = join(await makeTestFolder(), 'a-file');
    await writeFile(file, '');
    expect(() => openDatabase({ file: join(file, 'takewell.sqlite'), nowMs: 0 })).toThrow(
      expect.objectContaining({ code: 'store-unavailable', message: expect.stringContaining('TAKEWELL_DATA_DIR') }),
    );
  });

  it('does not touch a file that is no database', async () => {
    const file = join(await makeTestFolder(), 'takewell.sqlite');
    const text = 'somebody’s letter '.repeat(100);
    await writeFile(file, text);
    expect(() => openDatabase({ file, nowMs: 0 })).toThrow(
      expect.objectContaining({ code: 'store-unavailable', message: expect.stringContaining('SQLITE_NOTADB') }),
    );
    expect(statSync(file).size).toBe(Buffer.byteLength(text));
  });

  it('has no room beyond its bound, and says that the store is full', async () => {
    const { db, file } = await openFile({ maxPages: 100 });
    db.exec('CREATE TABLE filling (bytes BLOB)');
    const fill = db.prepare('INSERT INTO filling VALUES (zeroblob(40000))');
    expect(() => {
      for (let n = 0; n < 20; n += 1) fill.run();
    }).toThrow(expect.objectContaining({ code: 'SQLITE_FULL' }));
    db.pragma('wal_checkpoint(TRUNCATE)');
    expect(statSync(file).size).toBeLessThanOrEqual(100 * 4096);
  });
});

describe('openDatabaseToRead', () => {
  it('reads what a writer commits meanwhile, and cannot write', async () => {
    const { db, file } = await openFile();
    const reader = openDatabaseToRead(file);
    onTestFinished(() => void reader.close());
    db.exec(write);
    expect(reader.prepare("SELECT value FROM settings WHERE name = 'touched'").pluck().get()).toBe('1');
    expect(() => reader.exec(write)).toThrow(expect.objectContaining({ code: 'SQLITE_READONLY' }));
  });

  it('says so when there is no database', async () => {
    const file = join(await makeTestFolder(), 'takewell.sqlite');
    expect(() => openDatabaseToRead(file)).toThrow(expect.objectContaining({ code: 'store-unavailable' }));
    expect(existsSync(file)).toBe(false);
  });
});

describe('the room that readings take', () => {
  it('is at most 40 bytes a reading, roll-up included, at one reading in ten seconds', async () => {
    const { store, db } = await openTestStore();
    const pages = () => Number(db.pragma('page_count', { simple: true }));
    const before = pages();
    const count = 50_000;
    for (let n = 0; n < count; n += 1_000) {
      const readings = Array.from({ length: 1_000 }, (_, i) => {
        const timeMs = 1_750_000_000_000 + (n + i) * 10_000;
        return storedReading({ timeMs, temperature: 21.53, humidity: 95.27, receivedMs: timeMs + 130 });
      });
      await store.commit({ readings });
    }
    expect(((pages() - before) * 4096) / count).toBeLessThanOrEqual(40);
  });
});
