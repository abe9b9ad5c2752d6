// The `profile` and `plan` commands: shipped and stored profiles, faults with their places, and a plan laid out in time.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import { describePlan } from '../../../shared/healing/healing-plan.ts';
import { findStandardProfile, standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { runForJson, runTakewell, temporaryFolder } from './run-takewell.ts';

const tomato = findStandardProfile('tomato-common-practice')?.document;

async function folderWithProfile(): Promise<string> {
  if (tomato === undefined) throw new Error('the shipped tomato profile is gone');
  const dataDir = temporaryFolder();
  const store = openStore({ file: join(dataDir, 'takewell.sqlite'), nowMs: 0 });
  await store.profiles.addVersion('pepper', { ...tomato, name: 'Pepper of ours' }, 0, 'Noor');
  await store.profiles.addVersion('pepper', { ...tomato, name: 'Pepper, second try' }, 1, 'Noor');
  await store.close();
  return dataDir;
}

describe('profile list', () => {
  it('shows the shipped ones while there is no data folder', async () => {
    expect(await runForJson(['profile', 'list'])).toEqual(standardProfiles);
  });

  it('shows the newest version of those of the data folder first', async () => {
    const listed = (await runForJson(['profile', 'list'], { dataDir: await folderWithProfile() })) as {
      id: string;
      version: number;
    }[];
    expect(listed.map(({ id }) => id)).toEqual(['pepper', ...standardProfiles.map(({ id }) => id)]);
    expect(listed[0]?.version).toBe(2);
  });
});

describe('profile show', () => {
  it('prints the document, which the check then finds without fault', async () => {
    const { stdout } = await runTakewell(['profile', 'show', 'tomato-common-practice']);
    expect(JSON.parse(stdout)).toEqual(tomato);
    const checked = await runTakewell(['profile', 'check', '-', '--json'], { stdin: stdout });
    expect(checked).toEqual({ code: 0, stdout: '{\n  "faults": []\n}\n', stderr: '' });
  });

  it('prints the newest version of a stored one', async () => {
    expect(await runForJson(['profile', 'show', 'pepper'], { dataDir: await folderWithProfile() })).toMatchObject({
      name: 'Pepper, second try',
    });
  });
});

describe('profile check', () => {
  it('lists every fault with its place, exit code 1', async () => {
    const file = join(temporaryFolder(), 'profile.json');
    writeFileSync(file, JSON.stringify({ ...tomato, name: '', endsAfterHours: -1 }));
    const { code, stdout } = await runTakewell(['profile', 'check', file, '--json']);
    expect(code).toBe(1);
    const { faults } = JSON.parse(stdout) as { faults: { where: string; reason: string }[] };
    expect(faults.map(({ where }) => where)).toEqual(expect.arrayContaining(['/name', '/endsAfterHours']));
    const { stdout: lines } = await runTakewell(['profile', 'check', file]);
    expect(lines.split('\n').length - 1).toBe(faults.length);
  });

  it('calls a file that is not JSON a fault, not a misuse', async () => {
    const { code, stdout } = await runTakewell(['profile', 'check', '-'], { stdin: '{name:' });
    expect(code).toBe(1);
    expect(stdout).toMatch(/^the whole file: This is not JSON/);
  });
});

describe('plan', () => {
  // Clocks go forward in the night of the third day: venting still begins at seven in the morning.
  const closedAt = '2026-03-26T15:30:00Z';
  const args = ['plan', '--profile', 'tomato-common-practice', '--closed-at', closedAt, '--zone', 'Europe/Amsterdam'];

  it('prints stages, checks and hourly limits', async () => {
    if (tomato === undefined) throw new Error('the shipped tomato profile is gone');
    const printed = (await runForJson(args)) as ReturnType<typeof describePlan>;
    expect(printed).toEqual(describePlan(tomato, { closedMs: Date.parse(closedAt), zone: 'Europe/Amsterdam' }));
    expect(printed.stages[1]).toMatchObject({ stage: 'venting', startsAt: '2026-03-31T05:00:00Z' });
    expect(Object.keys(printed.limits[0] ?? {})).toEqual(['at', 'temperature', 'humidity']);
  });

  it('tells a reader in local time', async () => {
    const { stdout } = await runTakewell(args);
    expect(stdout).toMatch(/^venting +2026-03-31 07:00 to /m);
  });

  const wrong: [string, string[], string][] = [
    ['a profile that is not there', ['--profile', 'cactus', '--closed-at', closedAt, '--zone', 'UTC'], '"cactus"'],
    [
      'a time without a zone',
      ['--profile', 'tomato-common-practice', '--closed-at', '2026-03-26T15:30:00', '--zone', 'UTC'],
      '--closed-at',
    ],
    [
      'a zone that is not one',
      ['--profile', 'tomato-common-practice', '--closed-at', closedAt, '--zone', 'Mars/Olympus'],
      '--zone',
    ],
    ['no zone', ['--profile', 'tomato-common-practice', '--closed-at', closedAt], '--zone'],
  ];
  it.each(wrong)('refuses %s', async (_, options, named) => {
    const { code, stderr } = await runTakewell(['plan', ...options]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/^[^\n]+\n$/);
    expect(stderr).toContain(named);
  });
});
