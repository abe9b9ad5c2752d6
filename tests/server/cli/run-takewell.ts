// Runs an operator's command as a process of its own, the way a shell would.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const main = new URL('../../../server/cli/main.ts', import.meta.url).pathname;
/** As npm starts it. */
const first = ['--import', new URL('../../../server/require-node.mjs', import.meta.url).pathname];

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface RunOptions {
  readonly stdin?: string;
  readonly dataDir?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Options of Node itself. */
  readonly node?: readonly string[];
  /** Nobody reads standard output, as behind a `| head` that has ended: every piece written finds it closed. */
  readonly isUnread?: boolean;
}

/** Runs `takewell <args>`; without a data folder, in one that does not exist. */
export async function runTakewell(args: readonly string[], options: RunOptions = {}): Promise<Outcome> {
  const {
    stdin = '',
    dataDir = join(tmpdir(), 'takewell-no-such-folder'),
    env = {},
    node = [],
    isUnread = false,
  } = options;
  const child = spawn(process.execPath, [...node, ...first, main, ...args], {
    env: { PATH: process.env.PATH ?? '', TAKEWELL_DATA_DIR: dataDir, ...env },
  });
  let stdout = '';
  let stderr = '';
  if (isUnread) child.stdout.destroy();
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  // A command that ends without reading its input closes the pipe under us; what it said is the outcome.
  child.stdin.on('error', () => undefined);
  child.stdin.end(stdin);
  const code = await new Promise<number | null>((resolve, reject) => child.on('error', reject).on('close', resolve));
  return { code, stdout, stderr };
}

/** The one JSON value on stdout of a command that must have gone well. */
export async function runForJson(args: readonly string[], options: RunOptions = {}): Promise<unknown> {
  const { code, stdout, stderr } = await runTakewell([...args, '--json'], options);
  if (code !== 0) throw new Error(`exit ${code}: ${stderr}`);
  return JSON.parse(stdout) as unknown;
}

/** A folder that is gone when the test ends. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'takewell-cli-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return folder;
}
