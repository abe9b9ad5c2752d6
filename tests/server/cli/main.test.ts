// The front of all commands: help, exit codes, and one plain line on stderr when something is used wrongly.
import { describe, expect, it } from 'vitest';
import { runTakewell } from './run-takewell.ts';

const commands = [
  'air',
  'change-push-key',
  'check-payload',
  'node',
  'profile',
  'plan',
  'record',
  'replay',
  'set-password',
  'test-alert',
];

describe('help', () => {
  it('names every command', async () => {
    const { code, stdout, stderr } = await runTakewell(['--help']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    for (const command of commands) expect(stdout).toContain(`\n  ${command} `);
  });

  it.each(commands)('of %s says how it is used, whatever else is given', async (command) => {
    const { code, stdout, stderr } = await runTakewell([command, '--nonsense', '--help']);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(new RegExp(`^Usage: npm run takewell -- ${command} `));
  });
});

const misuses: [string, string[], string][] = [
  ['no command', [], 'air, change-push-key, check-payload'],
  ['a command there is not', ['aire'], '"aire"'],
  ['a command that every object has', ['toString'], '"toString"'],
  ['an unknown option', ['air', '--temp', '5'], '--temp'],
  ['an option that every object has', ['air', '--constructor', '5'], '--constructor'],
  ['a short option', ['air', '-t', '5'], '-t'],
  ['an option without its value', ['air', '--temperature'], '--temperature'],
  ['an option in place of a value', ['air', '--temperature', '--json'], '--temperature'],
  ['a value where none is taken', ['air', '--json=yes'], '--json'],
  ['an option given twice', ['air', '--humidity', '1', '--humidity', '2'], '--humidity'],
  ['a missing option', ['air', '--temperature', '25'], '--humidity'],
  ['a word too many', ['air', '25', '--temperature', '25', '--humidity', '95'], '"25"'],
  ['a missing file', ['profile', 'check'], 'FILE'],
  ['a file that is not there', ['profile', 'check', '/no/such/file'], '/no/such/file'],
  ['a profile that is not there', ['profile', 'show', 'cactus'], '"cactus"'],
  ['a verb that profile has not', ['profile', 'remove', 'x'], 'profile check FILE'],
];

describe('used wrongly', () => {
  it.each(misuses)('%s is told in one line that names it, exit code 2', async (_, args, named) => {
    const { code, stdout, stderr } = await runTakewell(args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^[^\n]+\n$/);
    expect(stderr).toContain(named);
  });

  it('names a setting that is not known', async () => {
    const { code, stderr } = await runTakewell(['profile', 'list'], { env: { TAKEWELL_DATADIR: '/x' } });
    expect(code).toBe(2);
    expect(stderr).toMatch(/^[^\n]*TAKEWELL_DATADIR[^\n]*\n$/);
  });

  it('says which Node is needed when it is started by an older one', async () => {
    const older =
      "data:text/javascript,Object.defineProperty(process,'versions',{value:{...process.versions,node:'23.11.1'}})";
    const { code, stdout, stderr } = await runTakewell(['air', '--help'], { node: ['--import', older] });
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(/^Takewell needs Node 24 or newer[^\n]*\n$/);
  });
});
