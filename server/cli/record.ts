// `record`: writes the climate record of a batch to a file or to standard output.
import { createWriteStream } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { Problem } from '../../shared/problem.ts';
import { type GatheredRecord, gatherRecord } from '../record/gather-record.ts';
import { recordCsv } from '../record/record-csv.ts';
import { recordJson } from '../record/record-json.ts';
import { openSite } from '../site.ts';
import type { Store } from '../store/store.ts';
import { version } from '../version.ts';
import { type Command, type ExitCode, print, type Terminal } from './command.ts';
import { fileOf, noDatabase, readStored } from './open-stored.ts';
import { misuse, parseOptions, requireOption } from './parse-options.ts';

import { codeOf } from './read-input.ts';

const usage = `Usage: npm run takewell -- record --batch ID --format FORMAT [--out FILE] [--json]

Writes the climate record of a batch, finished or not. The service may be running.

  --batch    id of the batch
  --format   csv (one table for a spreadsheet) or json
  --out      the file to write; standard output when not given
  --json     with --out: one JSON value that says what was written
`;

type Writer = (store: Store, gathered: GatheredRecord) => AsyncIterable<string>;

const writers = new Map<string, Writer>([
  ['csv', recordCsv],
  ['json', recordJson],
]);

export const record: Command = {
  usage,
  async run(args, terminal) {
    if (args[0] === 'verify') throw misuse('record verify is not part of this version yet: records are not sealed.');
    const { options } = parseOptions(args, { batch: 'text', format: 'text', out: 'text', json: 'flag' });
    const batchId = requireOption(options.batch, 'batch');
    const writer = findWriter(requireOption(options.format, 'format'));
    if (options.json === true && options.out === undefined && writer !== recordJson) {
      throw misuse('--json says what was written to a file: give --out FILE too.');
    }
    const done = await readStored(terminal, async (store): Promise<ExitCode> => {
      const gathered = await gather(store, batchId, terminal);
      const text = writer(store, gathered);
      if (options.out === undefined) {
        for await (const piece of text) await terminal.write(piece);
        return 0;
      }
      const bytes = await writeFile(options.out, text);
      const said = { batch: batchId, format: options.format, file: options.out, bytes };
      await print(terminal, options.json === true, said, [`${options.out}: ${bytes} bytes`]);
      return 0;
    });
    if (done === null) throw noDatabase(fileOf(terminal));
    return done;
  },
};

function findWriter(format: string): Writer {
  const writer = writers.get(format);
  if (writer !== undefined) return writer;
  if (format === 'pdf' || format === 'xlsx')
    throw misuse(`--format ${format} is not part of this version yet; use csv or json.`);
  throw misuse(`--format must be csv or json; "${format}" is neither.`);
}

async function gather(store: Store, batchId: string, { nowMs }: Terminal): Promise<GatheredRecord> {
  const { siteName, zone, altitudeM } = (await openSite(store)).current();
  return gatherRecord(store, batchId, { siteName, zone, altitudeM, nowMs, version });
}

/** Writes beside the file and then moves: a record that broke off never stands under its name. Answers with its size in bytes. */
async function writeFile(path: string, text: AsyncIterable<string>): Promise<number> {
  const unfinished = `${path}.unfinished`;
  const file = createWriteStream(unfinished);
  try {
    await pipeline(text, file);
    await rename(unfinished, path);
  } catch (cause) {
    await rm(unfinished, { force: true });
    if (cause instanceof Problem || !(cause instanceof Error && 'syscall' in cause)) throw cause;
    throw Problem.forOperator('bad-input', `The file ${path} cannot be written (${codeOf(cause)}).`, { cause });
  }
  return file.bytesWritten;
}
