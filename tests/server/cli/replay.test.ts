// The `replay` command on files and on a stored batch: shape, the same bytes each time, and one plain line for what cannot be read.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { databaseFile } from '../../../server/settings.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { findStandardProfile } from '../../../shared/healing/standard-profiles.ts';
import type { ReplayResult } from '../../../shared/replay/replay-result.ts';
import { MINUTE_MS, utcText } from '../../../shared/units.ts';
import { batch, FINISHED_MS, openSampleBatch, PEAK_MS, type SampleBatch } from '../record/sample-batch.ts';
import { runForJson, runTakewell, temporaryFolder } from './run-takewell.ts';

const CLOSED_MS = Date.parse('2026-04-07T14:00:00Z');
const HEADINGS = 'time,temperature_c,humidity_pct,note';

/** A reading a minute for two days; warm for an hour from the 20th hour on, and then the rows given. */
function writeSeries(change: (row: string, index: number) => string[] = (row) => [row], headings = HEADINGS): string {
  const rows = Array.from({ length: 2880 }, (_, i) => {
    const warm = Math.max(0, Math.min(5.5, (i - 1200) * 2, (1262 - i) * 2));
    const temperature = (23 + warm + 0.1 * Math.sin(i / 7)).toFixed(2);
    return `${utcText(CLOSED_MS + i * MINUTE_MS)},${temperature},${(95 + Math.sin(i / 11)).toFixed(1)},"a, b"`;
  });
  const file = join(temporaryFolder(), 'series.csv');
  writeFileSync(file, `${[headings, ...rows.flatMap(change)].join('\n')}\n`);
  return file;
}

const plan = ['--profile', 'tomato-common-practice', '--closed-at', utcText(CLOSED_MS), '--zone', 'Europe/Amsterdam'];
const ofFile = (file: string, ...more: string[]) => ['replay', '--csv', file, ...plan, ...more];
const replayFile = async (file: string, ...more: string[]) => (await runForJson(ofFile(file, ...more))) as ReplayResult;

describe('replay of a file', () => {
  describe('with other settings of the rules', () => {
    const rulesFile = (settings: unknown) => {
      const file = join(temporaryFolder(), 'rules.json');
      writeFileSync(file, typeof settings === 'string' ? settings : JSON.stringify(settings));
      return file;
    };
    const heatOf = ({ alarms }: ReplayResult) => alarms.filter(({ rule }) => rule === 'heat');

    it('tells later with a longer delay, ends later with a wider deadband, and nothing of a rule that is off', async () => {
      const series = writeSeries();
      const [usual] = heatOf(await replayFile(series));
      const slow = rulesFile({ heat: { onDelaySeconds: 600, outerOnDelaySeconds: 600, deadband: 3 } });
      const [later] = heatOf(await replayFile(series, '--rules', slow));
      expect(Date.parse(later?.occurredAt ?? '') - Date.parse(usual?.occurredAt ?? '')).toBeGreaterThanOrEqual(
        9 * MINUTE_MS,
      );
      expect(Date.parse(later?.returnedAt ?? '')).toBeGreaterThan(Date.parse(usual?.returnedAt ?? ''));
      expect(heatOf(await replayFile(series, '--rules', rulesFile({ heat: { off: true } })))).toEqual([]);
    });

    it('gives the same bytes as without them when they set nothing', async () => {
      const series = writeSeries();
      const usual = await runTakewell(ofFile(series, '--json'));
      const same = await runTakewell(ofFile(series, '--json', '--rules', rulesFile({})));
      expect(same.stdout).toBe(usual.stdout);
    });

    it('are refused in one line that names every fault', async () => {
      const bad = rulesFile({ haet: {}, heat: { onDelaySeconds: -1 } });
      const { code, stdout, stderr } = await runTakewell(ofFile(writeSeries(), '--rules', bad));
      expect([code, stdout]).toEqual([2, '']);
      expect(stderr.trim().split('\n')).toEqual([
        expect.stringMatching(/\/haet is no rule.*; \/heat\/onDelaySeconds must be at least 0/),
      ]);
      expect((await runTakewell(ofFile(writeSeries(), '--rules', rulesFile('{')))).stderr).toMatch(/is not JSON/);
    });
  });

  it('joins gaps as long as the profile says, unless it is told another length', async () => {
    const dataDir = temporaryFolder();
    const store = openStore({ file: databaseFile(dataDir), nowMs: 0 });
    const tomato = findStandardProfile('tomato-common-practice')?.document;
    if (tomato === undefined) throw new Error('the shipped tomato profile is gone');
    await store.profiles.addVersion('rare', { ...tomato, name: 'Rarely measured', silenceMinutes: 40 }, 0, 'Noor');
    await store.close();
    const file = writeSeries((row, i) => (i >= 100 && i < 130 ? [] : [row]));
    const unknown = async (profile: string, ...more: string[]) => {
      const times = ['--closed-at', utcText(CLOSED_MS), '--zone', 'Europe/Amsterdam'];
      const args = ['replay', '--csv', file, '--profile', profile, ...times, ...more];
      return ((await runForJson(args, { dataDir })) as ReplayResult).days[0]?.unknownHours;
    };
    expect(await unknown('rare')).toBe(0);
    expect(await unknown('tomato-common-practice')).toBeGreaterThan(0.5);
    expect(await unknown('rare', '--silence', '15')).toBeGreaterThan(0.5);
  });

  it('gives the alarms, days, quality and forecast of the contract', async () => {
    const { alarms, days, quality, ahead } = await replayFile(writeSeries());
    const hotMs = CLOSED_MS + 1200 * MINUTE_MS;
    const heat = alarms.filter(({ rule }) => rule === 'heat');
    expect(heat).toHaveLength(1);
    expect(heat[0]).toMatchObject({
      occurredAt: utcText(hotMs + 4 * MINUTE_MS),
      returnedAt: utcText(hotMs + 61 * MINUTE_MS),
    });
    expect(days.map(({ day, from, unknownHours }) => [day, from, unknownHours])).toEqual([
      [1, utcText(CLOSED_MS), 0],
      [2, utcText(CLOSED_MS + 1440 * MINUTE_MS), 0.016667],
    ]);
    expect(days[0]?.minutesAbove['28']).toBeGreaterThan(55);
    expect(quality).toEqual({ pass: 2880, suspect: 0, fail: 0, missing: 0 });
    expect(ahead).toMatchObject({ crossings: 1 });
  });

  it('is the same to the last byte, from a file or from standard input', async () => {
    const file = writeSeries();
    const [once, again] = [await runTakewell(ofFile(file, '--json')), await runTakewell(ofFile(file, '--json'))];
    const piped = await runTakewell(ofFile('-', '--json'), { stdin: readFileSync(file, 'utf8') });
    expect(once.code).toBe(0);
    expect(again.stdout).toBe(once.stdout);
    expect(piped.stdout).toBe(once.stdout);
    expect(once.stdout.endsWith('}\n')).toBe(true);
  });

  it('takes columns in any order, quoted, with the mark and line ends of a spreadsheet', async () => {
    const file = writeSeries();
    const turned = join(temporaryFolder(), 'turned.csv');
    const lines = readFileSync(file, 'utf8').trim().split('\n').slice(1);
    const rows = lines
      .map((line) => line.split(',').slice(0, 3))
      .map(([time, warmth, moisture]) => `"${moisture}",x,"${time}",${warmth}`);
    writeFileSync(turned, `\uFEFFHumidity_pct,other,time,temperature_c\r\n${rows.join('\r\n')}\r\n`);
    expect(await replayFile(turned)).toEqual(await replayFile(file));
  });

  it('counts what it cannot read as missing, and says so in one line on standard error', async () => {
    const spoilt = new Map([
      [10, 'yesterday,23.1,95.0,'],
      [11, '2026-04-07 14:11:00,23.1,95.0,'],
      [12, `${utcText(CLOSED_MS + 12 * MINUTE_MS)},,,`],
      [13, `${utcText(CLOSED_MS + 13 * MINUTE_MS)},warm,95.0,`],
      [14, `${utcText(CLOSED_MS + 5 * MINUTE_MS)},23.1,95.0,`],
    ]);
    const file = writeSeries((row, i) => [spoilt.get(i) ?? row]);
    const { code, stdout, stderr } = await runTakewell(ofFile(file, '--json'));
    expect(code).toBe(0);
    expect((JSON.parse(stdout) as ReplayResult).quality.missing).toBe(5);
    expect(stderr).toBe(
      '5 of 2880 rows count as missing, in whole or in part. The first: row 11: time must be written with its zone, like 2026-03-02T07:00:00Z; it says "yesterday".\n',
    );
  });

  it('joins over the silence it is told', async () => {
    const file = writeSeries((row, i) => (i > 600 && i < 640 ? [] : [row]));
    const [usual, longer] = [await replayFile(file), await replayFile(file, '--silence', '45')];
    expect(usual.days[0]?.unknownHours).toBeCloseTo(40 / 60, 4);
    expect(usual.alarms.map(({ rule }) => rule)).toContain('silent-probe');
    expect(longer.days[0]?.unknownHours).toBe(0);
    expect(longer.alarms.map(({ rule }) => rule)).not.toContain('silent-probe');
  });

  it('reads plainly without --json, and shows no progress where nobody watches', async () => {
    const { code, stdout, stderr } = await runTakewell(ofFile(writeSeries()));
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toContain('Tomato, common practice (tomato-common-practice). Times in Europe/Amsterdam.');
    expect(stdout).toMatch(/2026-04-08 12:04 {2}Heat {12}high {6}57 min/);
    expect(stdout).toContain('Readings: 2880 pass, 0 suspect, 0 fail, 0 missing.');
    expect(stdout).toMatch(/Heat ahead: the high limit was passed once, \d of them foretold/);
  });

  it('reads a long file in little memory', async () => {
    const rows = Array.from(
      { length: 150_000 },
      (_, i) =>
        `${utcText(CLOSED_MS + i * 1000)},${(23 + Math.sin(i / 3000)).toFixed(2)},${(95 + Math.sin(i / 900)).toFixed(2)}`,
    );
    const file = join(temporaryFolder(), 'long.csv');
    writeFileSync(file, `time,temperature_c,humidity_pct\n${rows.join('\n')}\n`);
    const { code, stdout } = await runTakewell(ofFile(file, '--json'), { node: ['--max-old-space-size=48'] });
    expect(code).toBe(0);
    expect((JSON.parse(stdout) as ReplayResult).quality.pass).toBe(150_000);
  });
});

describe('used wrongly', () => {
  const missing = () => writeSeries(undefined, 'time,temperature_c,rh');
  const empty = () => {
    const file = join(temporaryFolder(), 'empty.csv');
    writeFileSync(file, '');
    return file;
  };
  const cases: [string, () => string[], string][] = [
    ['a column that is not there', () => ofFile(missing()), 'humidity_pct'],
    ['an empty file', () => ofFile(empty()), 'time,temperature_c,humidity_pct'],
    ['a file of which no row can be used', () => ofFile(writeSeries(() => ['x,y,z'])), '"x"'],
    ['a file that is not there', () => ofFile('/no/such/file.csv'), '/no/such/file.csv'],
    ['neither file nor batch', () => ['replay', ...plan], '--csv'],
    ['both file and batch', () => ofFile('x.csv', '--batch', 'b'), '--batch'],
    ['no profile', () => ['replay', '--csv', 'x.csv', '--closed-at', utcText(CLOSED_MS), '--zone', 'UTC'], '--profile'],
    [
      'a profile there is not',
      () => ['replay', '--csv', 'x.csv', '--profile', 'cactus', '--closed-at', utcText(CLOSED_MS), '--zone', 'UTC'],
      '"cactus"',
    ],
    [
      'no time of closing',
      () => ['replay', '--csv', 'x.csv', '--profile', 'tomato-common-practice', '--zone', 'UTC'],
      '--closed-at',
    ],
    [
      'a zone there is not',
      () => ['replay', '--csv', 'x.csv', ...plan.slice(0, 4), '--zone', 'Mars/Base'],
      '"Mars/Base"',
    ],
    ['no silence at all', () => ofFile('x.csv', '--silence', '0'), '--silence'],
    [
      'a time of closing for a stored batch',
      () => ['replay', '--batch', 'b', '--closed-at', utcText(CLOSED_MS)],
      '--closed-at',
    ],
    ['a batch without a database', () => ['replay', '--batch', 'b'], 'database'],
  ];
  it.each(cases)('%s is told in one line that names it, exit code 2', async (_, args, named) => {
    const { code, stdout, stderr } = await runTakewell(args());
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^[^\n]+\n$/);
    expect(stderr).toContain(named);
  });
});

describe('replay of a stored batch', () => {
  let sample: SampleBatch;
  beforeAll(async () => {
    sample = await openSampleBatch();
  });
  afterAll(() => sample.close());
  const replayBatch = async (...more: string[]) =>
    (await runForJson(['replay', '--batch', batch.id, ...more], { dataDir: sample.folder })) as ReplayResult;

  it('finds the heat of the batch, and its days as the record has them', async () => {
    const { alarms, days } = await replayBatch();
    const heat = alarms.find(({ rule }) => rule === 'heat');
    expect(Math.abs(Date.parse(heat?.occurredAt ?? '') - PEAK_MS)).toBeLessThan(30 * MINUTE_MS);
    const record = (await runForJson(['record', '--batch', batch.id, '--format', 'json'], {
      dataDir: sample.folder,
    })) as {
      record?: { days: { minutesAbove: object; unknownHours: number }[] };
      days?: { minutesAbove: object; unknownHours: number }[];
    };
    const recorded = record.days ?? record.record?.days ?? [];
    expect(recorded.length).toBeGreaterThan(1);
    expect(days.map(({ minutesAbove, unknownHours }) => ({ minutesAbove, unknownHours })).slice(0, 2)).toEqual(
      recorded.map(({ minutesAbove, unknownHours }) => ({ minutesAbove, unknownHours })).slice(0, 2),
    );
  });

  it('is the same to the last byte', async () => {
    const once = async () =>
      (await runTakewell(['replay', '--batch', batch.id, '--json'], { dataDir: sample.folder })).stdout;
    const first = await once();
    expect(await once()).toBe(first);
    expect(first.length).toBeGreaterThan(100);
  });

  it('can be put through another profile', async () => {
    const { alarms } = await replayBatch('--profile', 'solanaceous-warm');
    expect(alarms).not.toEqual((await replayBatch()).alarms);
  });

  it('names the batch there is not', async () => {
    const { code, stderr } = await runTakewell(['replay', '--batch', 'b-none'], { dataDir: sample.folder });
    expect({ code, stderr }).toEqual({ code: 2, stderr: 'There is no batch b-none.\n' });
  });

  it('ends with the batch', async () => {
    const { days } = await replayBatch();
    expect(Date.parse(days.at(-1)?.to ?? '')).toBeGreaterThanOrEqual(FINISHED_MS);
  });
});
