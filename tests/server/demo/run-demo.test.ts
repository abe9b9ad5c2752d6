// `npm run demo` as a newcomer meets it: the real process, its words on the screen, and what it has promised, in real time.
import { type ChildProcess, spawn } from 'node:child_process';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, it, onTestFinished } from 'vitest';
import type { AlarmView } from '../../../shared/api/alarms.ts';
import type { ChamberView, ClimateSeries } from '../../../shared/api/chambers.ts';
import type { StreamEvent } from '../../../shared/api/stream.ts';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { createApiClient } from '../../support/api-client.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';

const root = join(import.meta.dirname, '../../..');
/** The demo says "within two minutes"; a busy machine is given half a minute more. */
const PATIENCE_MS = 150 * SECOND_MS;

function startDemo(temporary: string): ChildProcess {
  const ports = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0' };
  const demo = spawn(process.execPath, ['--import', './server/require-node.mjs', 'server/demo/main.ts'], {
    cwd: root,
    env: { PATH: process.env['PATH'], TMPDIR: temporary, ...ports },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void demo.kill('SIGKILL'));
  return demo;
}

/** The first lines of its output, so many. */
async function readLines({ stdout }: ChildProcess, count: number): Promise<string[]> {
  if (stdout === null) throw new Error('the demo has no output');
  const lines: string[] = [];
  for await (const line of createInterface(stdout)) if (lines.push(line) === count) return lines;
  throw new Error(`the demo ended after saying only: ${lines.join(' / ')}`);
}

/** The first alarm of the stream that `isWanted`; rejects when it does not come in time. */
async function waitForAlarm(url: string, cookie: string, isWanted: (alarm: AlarmView) => boolean): Promise<AlarmView> {
  const stream = await fetch(`${url}/api/v1/stream`, { headers: { cookie }, signal: AbortSignal.timeout(PATIENCE_MS) });
  let text = '';
  for await (const piece of stream.body ?? []) {
    text += Buffer.from(piece).toString('utf8');
    const messages = text.split('\n\n');
    text = messages.pop() ?? '';
    for (const message of messages) {
      const data = /^data: (.*)$/m.exec(message)?.[1];
      const event = data === undefined ? null : (JSON.parse(data) as StreamEvent);
      if (event?.event === 'alarm' && isWanted(event.alarm)) return event.alarm;
    }
  }
  throw new Error('the stream ended before such an alarm came');
}

it(
  'says where it is and how to sign in, has days of past, alarms as promised, and leaves nothing behind',
  async () => {
    const temporary = await makeTestFolder();
    const demo = startDemo(temporary);
    const said = await readLines(demo, 3);
    const url = /^Takewell is ready at (http:\/\/127\.0\.0\.1:\d+)$/.exec(said[0] ?? '')?.[1] ?? '';
    const [, name, password] =
      /^Sign in as "(.+)" with the password "(.+)"\. Everything in it is invented/.exec(said[1] ?? '') ?? [];

    const api = createApiClient(url);
    expect((await api.post('/session', { name, password })).status).toBe(201);
    expect((await api.get<{ demo: boolean }>('/session')).body.demo).toBe(true);
    const { items } = (await api.get<{ items: ChamberView[] }>('/chambers')).body;
    expect(items.map(({ batch }) => batch?.healingDay).sort()).toEqual([2, 4, 6, 7]);
    for (const { id, batch } of items) {
      const { body: climate } = await api.get<ClimateSeries>(`/chambers/${id}/climate?points=50`);
      const hours = climate.temperature.mean.filter((value) => value !== null).length * (climate.bucketSeconds / 3600);
      expect(hours).toBeGreaterThan(40);
      const record = await api.text(`/batches/${batch?.id}/record.csv`);
      expect(record.status).toBe(200);
      expect(record.body.match(/^reading,/gm)?.length).toBeGreaterThan(5_000);
    }

    const alarm = await waitForAlarm(
      url,
      api.cookie(),
      ({ rule, state }) => rule === 'heat' && state === 'unacknowledged',
    );
    expect(said[2]).toContain(`Within two minutes ${alarm.chamberName} gets too hot`);
    expect(['high', 'critical']).toContain(alarm.priority);

    const ended = new Promise((resolve) => demo.once('exit', resolve));
    demo.kill('SIGINT');
    expect(await ended).toBe(0);
    expect(await readdir(temporary)).toEqual([]);
  },
  4 * MINUTE_MS,
);
