// Which command is meant, and what its outcome means to a shell. It knows no process.
import { Problem } from '../../shared/problem.ts';
import type { Command, ExitCode, Terminal } from './command.ts';
import { misuse } from './parse-options.ts';

interface Entry {
  readonly does: string;
  /** Loaded only when asked for, so that `air` need not open a database. */
  load(): Promise<Command>;
}

const commands: Readonly<Record<string, Entry>> = {
  air: { does: 'describe air of a temperature and humidity', load: async () => (await import('./air.ts')).air },
  'change-push-key': {
    does: 'make new keys for pushes',
    load: async () => (await import('./change-push-key.ts')).changePushKey,
  },
  'check-payload': {
    does: 'say what admission would do with a message',
    load: async () => (await import('./check-payload.ts')).checkPayload,
  },
  node: { does: 'be a simulated sensor node', load: async () => (await import('./node.ts')).node },
  profile: { does: 'list, show or check healing profiles', load: async () => (await import('./profile.ts')).profile },
  plan: { does: 'lay out stages, checks and limits of a healing', load: async () => (await import('./plan.ts')).plan },
  replay: {
    does: 'put a batch or a file through profile and alarm rules',
    load: async () => (await import('./replay.ts')).replay,
  },
  record: { does: 'write the climate record of a batch', load: async () => (await import('./record.ts')).record },
  'set-password': {
    does: 'give a person a new password',
    load: async () => (await import('./set-password.ts')).setPassword,
  },
  'test-alert': {
    does: 'try a channel with a test message',
    load: async () => (await import('./test-alert.ts')).testAlert,
  },
};

/** Runs a command line. `complain` gets the one line of an error. */
export async function runCommand(
  args: readonly string[],
  terminal: Terminal,
  complain: (line: string) => void,
): Promise<ExitCode> {
  try {
    return await dispatch(args, terminal);
  } catch (error) {
    complain(describeError(error));
    return error instanceof Problem && isMisuse(error) ? 2 : 1;
  }
}

async function dispatch([name, ...rest]: readonly string[], terminal: Terminal): Promise<ExitCode> {
  if (name === '--help' || name === 'help') {
    await terminal.write(overview());
    return 0;
  }
  const names = Object.keys(commands).join(', ');
  if (name === undefined) throw misuse(`Name a command: ${names}.`);
  const entry = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (entry === undefined) throw misuse(`There is no command "${name}"; there are ${names}.`);
  const command = await entry.load();
  if (!rest.includes('--help')) return command.run(rest, terminal);
  await terminal.write(command.usage);
  return 0;
}

function overview(): string {
  const lines = Object.entries(commands).map(([name, { does }]) => `  ${name.padEnd(17)}${does}\n`);
  return `Usage: npm run takewell -- <command>\n\n${lines.join('')}\nEach has --help. Exit code: 0 done, 1 the answer is no, 2 used wrongly.\n`;
}

/** What was typed, or set in the environment, cannot be carried out. */
function isMisuse({ code }: Problem): boolean {
  return code === 'bad-input' || code === 'bad-setting' || code === 'not-found';
}

function describeError(error: unknown): string {
  const message = error instanceof Problem ? error.message : `Something went wrong inside Takewell: ${String(error)}`;
  return message.replaceAll(/\s*[\r\n]+\s*/g, ' ');
}
