// A real mosquitto broker on a free loopback port, stopped and started by the test; and mosquitto_pub, the program people publish with.
import { type ChildProcess, spawn } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { userInfo } from 'node:os';
import { join } from 'node:path';
import { onTestFinished, vi } from 'vitest';
import { findFreePort } from './free-port.ts';
import { makeTestFolder } from './open-test-app.ts';

export interface Mosquitto {
  readonly url: string;
  readonly port: number;
  /** Resolves when it accepts connections. */
  start(): Promise<void>;
  /** SIGTERM lets it save its sessions, if it keeps any; SIGKILL is the power cut. Resolves when it is gone. */
  stop(signal: 'SIGTERM' | 'SIGKILL'): Promise<void>;
}

const programs = { broker: 'mosquitto', publisher: 'mosquitto_pub' } as const;
/** Debian keeps the broker where ordinary users have no path to. */
const environment = { ...process.env, PATH: `${process.env['PATH']}:/usr/sbin:/usr/local/sbin` };

/** Starts it. `persistence`: sessions and what is queued for them outlive a SIGTERM. Stopped when the test ends. */
export async function openMosquitto({ persistence }: { readonly persistence: boolean }): Promise<Mosquitto> {
  const folder = await makeTestFolder();
  const port = await findFreePort();
  const config = join(folder, 'mosquitto.conf');
  const lines = [
    `listener ${port} 127.0.0.1`,
    'allow_anonymous true',
    `persistence ${persistence}`,
    `persistence_location ${folder}/`,
    // By default it drops what waits for a client past a thousand messages.
    'max_queued_messages 0',
    // Else it gives up root for a user who may not write in the folder.
    `user ${userInfo().username}`,
  ];
  await writeFile(config, `${lines.join('\n')}\n`);
  let running: ChildProcess | null = null;
  const stop = async (signal: 'SIGTERM' | 'SIGKILL') => {
    if (running === null) return;
    const gone = exitOf(running);
    running.kill(signal);
    running = null;
    await gone;
  };
  const start = async () => {
    running = spawn(programs.broker, ['-c', config], { stdio: 'ignore', env: environment });
    await vi.waitFor(() => tryToConnect(port), { timeout: 10_000, interval: 20 });
  };
  onTestFinished(() => stop('SIGTERM'));
  await start();
  return { url: `mqtt://127.0.0.1:${port}`, port, start, stop };
}

/** Publishes each line as a message with QoS 1, as `mosquitto_pub -l` does. Resolves when the program has ended well: all are acknowledged. */
export async function publishLines(port: number, topic: string, lines: readonly string[]): Promise<void> {
  await runPublisher(['-p', String(port), '-t', topic, '-q', '1', '-l'], lines.map((line) => `${line}\n`).join(''));
}

/** Publishes one message with the retain flag. */
export async function publishRetained(port: number, topic: string, text: string): Promise<void> {
  await runPublisher(['-p', String(port), '-t', topic, '-q', '1', '-r', '-s'], text);
}

async function runPublisher(args: readonly string[], input: string): Promise<void> {
  const child = spawn(programs.publisher, ['-h', '127.0.0.1', ...args], {
    stdio: ['pipe', 'ignore', 'pipe'],
    env: environment,
  });
  const errors: string[] = [];
  child.stderr.on('data', (data: Buffer) => errors.push(String(data)));
  child.stdin.end(input);
  const code = await exitOf(child);
  if (code !== 0) throw new Error(`mosquitto_pub ended with ${code}: ${errors.join('')}`);
}

function exitOf(child: ChildProcess): Promise<number | null> {
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => resolve(code));
  });
}

function tryToConnect(port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => {
      socket.destroy();
      resolve();
    });
    socket.once('error', reject);
  });
}
