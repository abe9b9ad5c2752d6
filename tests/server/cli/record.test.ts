// The `record` command, also while another connection holds the same database open for writing, as the service does.
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { batchRecordDocumentSchema } from '../../../shared/api/record.ts';
import { batch, openSampleBatch, type SampleBatch } from '../record/sample-batch.ts';
import { runForJson, runTakewell, temporaryFolder } from './run-takewell.ts';

let sample: SampleBatch;
beforeAll(async () => {
  sample = await openSampleBatch();
});
afterAll(() => sample.close());

const record = (...args: string[]) => ['record', '--batch', batch.id, ...args];

describe('record', () => {
  it('writes the table to standard output', async () => {
    const { code, stdout, stderr } = await runTakewell(record('--format', 'csv'), { dataDir: sample.folder });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const rows = parse(stdout, { bom: true, columns: true }) as { section: string; what: string; note: string }[];
    expect(rows.filter(({ section }) => section === 'reading').length).toBeGreaterThan(1000);
    expect(rows.find(({ what }) => what === 'zone')?.note).toBe('Europe/Amsterdam');
  });

  it('writes the document to standard output, the one JSON value of --json', async () => {
    const printed = await runForJson(record('--format', 'json'), { dataDir: sample.folder });
    const { site, version, readings } = batchRecordDocumentSchema.parse(printed);
    expect(site.name).toBe('Lindehof');
    expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(readings.length).toBeGreaterThan(1000);
  });

  it('writes a file and says how long it is', async () => {
    const file = join(temporaryFolder(), 'record.csv');
    const said = await runForJson(record('--format', 'csv', '--out', file), { dataDir: sample.folder });
    expect(said).toEqual({ batch: batch.id, format: 'csv', file, bytes: readFileSync(file).length });
    expect(existsSync(`${file}.unfinished`)).toBe(false);
  });

  it('reads the database of a service that is stopped, even if it may only read the file', async () => {
    const stopped = await openSampleBatch();
    await stopped.store.close();
    chmodSync(stopped.file, 0o444);
    const { code, stderr } = await runTakewell(record('--format', 'json'), { dataDir: stopped.folder });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });

  it('ends quietly when nobody reads on', async () => {
    const options = { dataDir: sample.folder, isUnread: true };
    const outcome = await runTakewell(record('--format', 'csv'), options);
    expect(outcome).toEqual({ code: 0, stdout: '', stderr: '' });
  });

  const wrong: [string, string[], string][] = [
    ['a batch that is not there', ['record', '--batch', 'b-none', '--format', 'csv'], 'b-none'],
    ['a form that is not one', record('--format', 'doc'), '"doc"'],
    ['a form that is still to come', record('--format', 'pdf'), 'pdf'],
    ['another form that is still to come', record('--format', 'xlsx'), 'xlsx'],
    ['verifying, which is still to come', ['record', 'verify', 'file'], 'verify'],
    [
      'a file in a folder that is not there',
      record('--format', 'csv', '--out', '/no/such/folder/x.csv'),
      '/no/such/folder/x.csv',
    ],
    ['--json with a table on standard output', record('--format', 'csv', '--json'), '--out'],
    ['no batch', ['record', '--format', 'csv'], '--batch'],
  ];
  it.each(wrong)('refuses %s in one line, exit code 2', async (_, args, named) => {
    const { code, stdout, stderr } = await runTakewell(args, { dataDir: sample.folder });
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^[^\n]+\n$/);
    expect(stderr).toContain(named);
  });

  it('makes no database where there is none', async () => {
    const dataDir = temporaryFolder();
    const { code, stderr } = await runTakewell(record('--format', 'csv'), { dataDir });
    expect(code).toBe(2);
    expect(stderr).toContain(dataDir);
    expect(existsSync(join(dataDir, 'takewell.sqlite'))).toBe(false);
  });

  it('says in one line that the database is none, exit code 1: the command was used rightly', async () => {
    const dataDir = temporaryFolder();
    writeFileSync(join(dataDir, 'takewell.sqlite'), 'a shopping list, and not a short one '.repeat(100));
    const { code, stdout, stderr } = await runTakewell(record('--format', 'csv'), { dataDir });
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toMatch(/^[^\n]+\n$/);
  });
});
