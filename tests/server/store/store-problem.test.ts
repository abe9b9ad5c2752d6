// What a failure of SQLite is told as: by its code, never by its words.
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { guarded, storeProblem } from '../../../server/store/store-problem.ts';
import { Problem } from '../../../shared/problem.ts';

it.each([
  ['SQLITE_FULL', 'store-full'],
  ['SQLITE_CONSTRAINT_UNIQUE', 'conflict'],
  ['SQLITE_CONSTRAINT_PRIMARYKEY', 'conflict'],
  ['SQLITE_CONSTRAINT_FOREIGNKEY', 'conflict'],
  ['SQLITE_CONSTRAINT_DATATYPE', 'conflict'],
  ['SQLITE_IOERR_WRITE', 'store-unavailable'],
  ['SQLITE_READONLY', 'store-unavailable'],
  ['SQLITE_CORRUPT', 'store-unavailable'],
  ['SQLITE_BUSY', 'store-unavailable'],
])('%s is %s', (code, expected) => {
  const cause = new Database.SqliteError('words that mean nothing', code);
  expect(storeProblem(cause)).toMatchObject({ code: expected, cause });
});

it('names the code where somebody has to look into it', () => {
  expect(storeProblem(new Database.SqliteError('', 'SQLITE_IOERR_WRITE'))).toMatchObject({
    message: expect.stringContaining('SQLITE_IOERR_WRITE'),
  });
});

it('leaves alone what is no error of the database', () => {
  const own = new TypeError('a fault of ours');
  expect(storeProblem(own)).toBe(own);
  expect(() =>
    guarded(() => {
      throw own;
    }),
  ).toThrow(own);
});

it('is thrown by guarded work, whose value is handed on when it goes well', () => {
  const db = new Database(':memory:');
  expect(guarded(() => db.prepare('SELECT 1 one').pluck().get())).toBe(1);
  db.exec('CREATE TABLE names (name TEXT PRIMARY KEY); INSERT INTO names VALUES (1)');
  expect(() => guarded(() => db.exec('INSERT INTO names VALUES (1)'))).toThrow(Problem);
});
