// `replay`: a stored batch or a file through a profile and the alarm rules: what would have been told, and how well it was foretold.
import { stat } from 'node:fs/promises';
import { validZone } from '../../shared/healing/time-of-day.ts';
import type { ReplayResult } from '../../shared/replay/replay-result.ts';
import { createSeriesReplay, type SeriesSetup } from '../../shared/replay/replay-series.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { type Command, print, type Terminal } from './command.ts';
import { findProfile } from './find-profiles.ts';
import { misuse, parseOptions, readNumber, readTime, requireOption } from './parse-options.ts';
import { createProgress } from './progress.ts';
import { readRules } from './read-rules.ts';
import { readSeries, type SeriesFaults } from './read-series.ts';
import { replayBatch } from './replay-batch.ts';
import { sayReplay } from './say-replay.ts';

const usage = `Usage: npm run takewell -- replay --csv FILE --profile ID --closed-at TIME --zone ZONE [--silence MINUTES] [--rules FILE] [--json]
       npm run takewell -- replay --batch ID [--profile ID] [--silence MINUTES] [--rules FILE] [--json]

Puts a series of readings through the plan and the alarm rules, as the live watch would have done: the alarms that would have come,
the exposure of every healing day, the quality of the readings, and how well heat was foretold. The same input gives the same output.

  --csv         a file with the columns time,temperature_c,humidity_pct, more ignored; - reads standard input
  --profile     id of a profile; "profile list" shows them. With --batch: the batch's own when not given
  --closed-at   when the chamber was closed, RFC 3339, for example 2026-03-02T15:30:00Z
  --zone        time zone of the site, for example Europe/Amsterdam
  --silence     longest gap in minutes that is still joined and longest silence that is no alarm, 1 to 240
                (the profile's when not given; with --batch each probe's own)
  --batch       id of a stored batch: the readings of its probes, with its holds and moves
  --rules       a JSON file with other settings of the alarm rules, to see what they would have told; what is not in it stays.
                By the name of the rule: onDelaySeconds, outerOnDelaySeconds (at the outer limit) and offDelaySeconds (0 to 86400),
                deadband (in the unit of the value; heat, cold, dry, wet, vpd, plan-late), off (true = tells nothing), for example
                {"heat": {"onDelaySeconds": 300, "deadband": 1}, "wet": {"off": true}}
  --json        one JSON value; times in UTC
`;

type Options = Readonly<
  Record<'csv' | 'batch' | 'profile' | 'closed-at' | 'zone' | 'silence' | 'rules', string | undefined>
>;

interface Replayed {
  readonly result: ReplayResult;
  readonly what: string;
  readonly zone: string;
}

export const replay: Command = {
  usage,
  async run(args, terminal) {
    const { options } = parseOptions(args, {
      csv: 'text',
      batch: 'text',
      profile: 'text',
      'closed-at': 'text',
      zone: 'text',
      silence: 'text',
      rules: 'text',
      json: 'flag',
    });
    if ((options.csv === undefined) === (options.batch === undefined))
      throw misuse('Give either --csv FILE or --batch ID.');
    const { result, what, zone } = await (options.csv === undefined
      ? ofBatch(options, terminal)
      : ofFile(options, terminal));
    await print(terminal, options.json === true, result, [what, '', ...sayReplay(result, zone)]);
    return 0;
  },
};

async function ofBatch(options: Options, terminal: Terminal): Promise<Replayed> {
  for (const name of ['closed-at', 'zone'] as const) {
    if (options[name] !== undefined) throw misuse(`--${name} goes with --csv; a stored batch knows its own.`);
  }
  const batchId = requireOption(options.batch, 'batch');
  const silenceMs = options.silence === undefined ? null : readSilence(options.silence);
  const rules = await rulesOf(options, terminal);
  return replayBatch({ batchId, profileId: options.profile ?? null, silenceMs, ...rules }, terminal);
}

async function ofFile(options: Options, terminal: Terminal): Promise<Replayed> {
  const path = requireOption(options.csv, 'csv');
  const id = requireOption(options.profile, 'profile');
  const closedMs = readTime(requireOption(options['closed-at'], 'closed-at'), 'closed-at');
  const zone = requireOption(options.zone, 'zone');
  if (!validZone(zone)) throw misuse(`--zone must be a time zone like Europe/Amsterdam; "${zone}" is not one.`);
  const silence = options.silence === undefined ? null : readSilence(options.silence);
  const rules = await rulesOf(options, terminal);
  const { document } = await findProfile(id, terminal);
  const silenceMs = silence ?? document.silenceMinutes * MINUTE_MS;
  const result = await replayFile(path, { document, closedMs, zone, silenceMs, ...rules }, terminal);
  return { result, what: `${path} through ${document.name} (${id}). Times in ${zone}.`, zone };
}

/** The rules of the file that was named, if one was. */
async function rulesOf({ rules: path }: Options, terminal: Terminal): Promise<Pick<SeriesSetup, 'rules'>> {
  return path === undefined ? {} : { rules: await readRules(path, terminal) };
}

async function replayFile(path: string, setup: SeriesSetup, terminal: Terminal): Promise<ReplayResult> {
  const series = createSeriesReplay(setup);
  const progress = createProgress(terminal, 'replay', await sizeOf(path));
  const faults = await readSeries(path, terminal, {
    take: (sample) => series.add(sample),
    miss: () => series.miss(),
    progress: (bytes) => progress.at(bytes),
  }).finally(() => progress.end());
  tellFaults(faults, terminal);
  return series.result();
}

async function sizeOf(path: string): Promise<number | null> {
  if (path === '-') return null;
  const found = await stat(path).catch(() => null);
  return found?.size ?? null;
}

function tellFaults({ rows, taken, faulty, first }: SeriesFaults, terminal: Terminal): void {
  if (taken === 0) throw misuse(`No row of the file can be used${first === null ? '' : `; ${first}`}.`);
  if (first !== null)
    terminal.ask(`${faulty} of ${rows} rows count as missing, in whole or in part. The first: ${first}.\n`);
}

function readSilence(text: string): number {
  return readNumber(text, 'silence', { min: 1, max: 240 }) * MINUTE_MS;
}
