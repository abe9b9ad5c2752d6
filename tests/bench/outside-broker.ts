// A mosquitto for the benchmarks, where there is one on this machine.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import { findFreePort } from '../support/free-port.ts';

export interface OutsideBroker {
  readonly port: number;
  readonly url: string;
  close(): Promise<void>;
}

const PROGRAM = 'mosquitto';
/** Debian keeps it where ordinary users have no path to. */
const environment = { ...process.env, PATH: `${process.env['PATH']}:/usr/sbin:/usr/local/sbin` };

/** Starts it; null when it is not installed. */
export async function openOutsideBroker(): Promise<OutsideBroker | null> {
  if (spawnSync(PROGRAM, ['-h'], { env: environment }).error !== undefined) return null;
  const folder = mkdtempSync(join(tmpdir(), 'takewell-bench-'));
  const port = await findFreePort();
  const config = join(folder, 'mosquitto.conf');
  const lines = [`listener ${port} 127.0.0.1`, 'allow_anonymous true', 'max_queued_messages 0'];
  writeFileSync(config, `${[...lines, `user ${userInfo().username}`].join('\n')}\n`);
  const broker = spawn(PROGRAM, ['-c', config], { env: environment, stdio: 'ignore' });
  const gone = new Promise<void>((resolve) => broker.once('exit', () => resolve()));
  const url = `mqtt://127.0.0.1:${port}`;
  const probe = await mqtt.connectAsync(url, { reconnectPeriod: 20 }, true);
  await probe.endAsync();
  return {
    port,
    url,
    async close() {
      broker.kill();
      await gone;
      rmSync(folder, { recursive: true });
    },
  };
}

/** A bare subscriber with QoS 1; `all` resolves when it has been given so many messages. */
export async function followBare(
  url: string,
  count: number,
): Promise<{ readonly all: Promise<void>; end(): Promise<void> }> {
  const client = await mqtt.connectAsync(url, { clientId: 'bare-subscriber', clean: false });
  let seen = 0;
  const all = new Promise<void>((resolve) => {
    client.on('message', () => {
      seen += 1;
      if (seen === count) resolve();
    });
  });
  await client.subscribeAsync('takewell/v1/+/readings', { qos: 1 });
  return {
    all,
    async end() {
      await client.unsubscribeAsync('takewell/v1/+/readings');
      await client.endAsync();
    },
  };
}
