// The service as a process of its own, with its output, ended by the test at the latest.
import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { onTestFinished } from 'vitest';

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface ServiceRun {
  /** The first line on stdout; rejects when the process ends before it. */
  readonly ready: Promise<string>;
  readonly ended: Promise<Ended>;
  readonly pid: number;
  kill(signal: NodeJS.Signals): void;
}

const root = resolve(import.meta.dirname, '../..');
/** As npm starts it. */
const first = ['--import', resolve(root, 'server/require-node.mjs')];

/**
 * Starts a script of the repository with settings as environment variables; other settings of this machine do not reach it. `within` is a
 * command that ends by running what follows it, in a world of its own.
 */
export function startService(
  script: string,
  environment: Readonly<Record<string, string>>,
  args: readonly string[] = [],
  within: readonly string[] = [],
): ServiceRun {
  const own = Object.entries(process.env).filter(([name]) => !name.startsWith('TAKEWELL_'));
  const [program = process.execPath, ...rest] = [...within, process.execPath, ...first, resolve(root, script), ...args];
  const child = spawn(program, rest, {
    cwd: root,
    env: { ...Object.fromEntries(own), ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = gather(child);
  const ready = firstLine(child, ended);
  // Not every test waits for it.
  ready.catch(() => undefined);
  onTestFinished(async () => {
    child.kill('SIGKILL');
    await ended;
  });
  return { ready, ended, pid: child.pid ?? 0, kill: (signal) => void child.kill(signal) };
}

function gather(child: ChildProcess): Promise<Ended> {
  const output = { stdout: '', stderr: '' };
  for (const name of ['stdout', 'stderr'] as const) {
    child[name]?.setEncoding('utf8').on('data', (text: string) => {
      output[name] += text;
    });
  }
  return new Promise((resolveEnded, reject) => {
    child.once('error', reject);
    child.once('close', (code, signal) => resolveEnded({ code, signal, ...output }));
  });
}

function firstLine(child: ChildProcess, ended: Promise<Ended>): Promise<string> {
  return new Promise((resolveLine, reject) => {
    let text = '';
    child.stdout?.on('data', (more: string) => {
      text += more;
      if (text.includes('\n')) resolveLine(text.slice(0, text.indexOf('\n')));
    });
    ended.then(({ code, signal, stderr }) => reject(new Error(`it ended with ${code ?? signal}: ${stderr}`)), reject);
  });
}
