// `profile list`, `profile show ID`, `profile check FILE`: healing profiles as documents. It changes none.
import { findProfileFaults } from '../../shared/healing/profile-faults.ts';
import { type SaidFault, sayFaults } from '../../shared/problem.ts';
import { english } from '../../shared/words/en/english.ts';
import { type Command, type ExitCode, print, type Terminal } from './command.ts';
import { findProfile, listProfiles } from './find-profiles.ts';
import { misuse, parseOptions } from './parse-options.ts';
import { readInput } from './read-input.ts';

const usage = `Usage: npm run takewell -- profile list [--json]
       npm run takewell -- profile show ID [--json]
       npm run takewell -- profile check FILE [--json]

list    the profiles there are: those of the data folder, and the shipped ones
show    the document of a profile, as JSON: a start for a file of your own
check   every fault of a profile in a file (- is standard input), each with its place; exit code 1 if there is any
`;

export const profile: Command = {
  usage,
  async run(args, terminal) {
    const verb = args.find((arg) => !arg.startsWith('-'));
    const rest = args.toSpliced(args.indexOf(verb ?? ''), verb === undefined ? 0 : 1);
    if (verb === 'list') return list(rest, terminal);
    if (verb === 'show') return show(rest, terminal);
    if (verb === 'check') return check(rest, terminal);
    throw misuse('Say profile list, profile show ID or profile check FILE; --help tells more.');
  },
};

async function list(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { options } = parseOptions(args, { json: 'flag' });
  const profiles = await listProfiles(terminal);
  const lines = profiles.map(({ id, version, document }) => `${id.padEnd(28)} v${version}  ${document.name}`);
  await print(terminal, options.json === true, profiles, lines);
  return 0;
}

async function show(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { words } = parseOptions(args, { json: 'flag' }, ['ID']);
  const { document } = await findProfile(words[0] ?? '', terminal);
  await print(terminal, true, document, []);
  return 0;
}

async function check(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  const { options, words } = parseOptions(args, { json: 'flag' }, ['FILE']);
  const text = new TextDecoder().decode(await readInput(words[0] ?? '-', terminal));
  const faults = findFaults(text);
  const lines = faults.map(({ where, reason }) => `${where === '' ? 'the whole file' : where}: ${reason}`);
  await print(terminal, options.json === true, { faults }, faults.length === 0 ? ['No fault found.'] : lines);
  return faults.length === 0 ? 0 : 1;
}

function findFaults(text: string): readonly SaidFault[] {
  let candidate: unknown;
  try {
    candidate = JSON.parse(text);
  } catch (error) {
    return [{ where: '', reason: `This is not JSON: ${error instanceof Error ? error.message : String(error)}` }];
  }
  return sayFaults(findProfileFaults(candidate).faults, english);
}
