// An outside broker that goes away and comes back, and a service that does: whatever a node was acknowledged is in the store at the end.
import { expect, it } from 'vitest';
import { createBufferingNode } from '../support/buffering-node.ts';
import { untilReady } from '../support/health.ts';
import { openMosquitto, publishLines } from '../support/mosquitto.ts';
import { openTestApp, type TestApp } from '../support/open-test-app.ts';

const START = 1_750_000_000;
const LONG = { timeout: 30_000 };
const readingAt = (n: number) => ({ temperature: 20 + (n % 80) / 10, humidity: 95, time: START + n });
const stored = ({ app }: TestApp) => app.store.readings.countAll();

async function expectStored(test: TestApp, times: readonly number[]): Promise<void> {
  await expect.poll(() => stored(test), LONG).toBe(times.length);
  const kept: number[] = [];
  for await (const { timeMs } of test.app.store.readings.range(1, 0, Number.MAX_SAFE_INTEGER)) kept.push(timeMs);
  expect(kept).toEqual([...times].sort((a, b) => a - b).map((time) => time * 1000));
}

it('loses nothing when the broker is restarted in the middle of a node’s readings', async () => {
  const mosquitto = await openMosquitto({ persistence: true });
  const test = await openTestApp({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(test.api);
  const node = createBufferingNode<ReturnType<typeof readingAt>>('n1');
  await node.connect(mosquitto.port);
  for (let n = 0; n < 1_000; n += 1) node.add(readingAt(n));
  await expect.poll(() => node.acknowledged.length, LONG).toBeGreaterThan(100);
  await mosquitto.stop('SIGTERM');
  for (let n = 1_000; n < 2_000; n += 1) node.add(readingAt(n));
  await mosquitto.start();
  expect(await node.connect(mosquitto.port)).toBe(true);
  await expect.poll(() => node.waiting(), LONG).toBe(0);
  const acknowledged = node.acknowledged.map(({ time }) => time);
  await expectStored(test, acknowledged);
  expect(acknowledged).toHaveLength(2_000);
  await untilReady(test.api);
  await node.close();
});

it('follows a broker again that was killed and has forgotten it', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const test = await openTestApp({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(test.api);
  const lines = (from: number) => Array.from({ length: 100 }, (_, i) => JSON.stringify(readingAt(from + i)));
  await publishLines(mosquitto.port, 'takewell/v1/n1/readings', lines(0));
  await expect.poll(() => stored(test), LONG).toBe(100);
  await mosquitto.stop('SIGKILL');
  await expect.poll(async () => (await test.api.get('/health')).status, LONG).toBe(503);
  await mosquitto.start();
  await untilReady(test.api);
  await publishLines(mosquitto.port, 'takewell/v1/n1/readings', lines(100));
  await expect.poll(() => stored(test), LONG).toBe(200);
});

it('is handed over what the broker took while the service was away', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const environment = { TAKEWELL_MQTT_URL: mosquitto.url };
  const before = await openTestApp({ environment });
  await untilReady(before.api);
  await before.app.close();
  const lines = Array.from({ length: 100 }, (_, n) => JSON.stringify(readingAt(n)));
  await publishLines(mosquitto.port, 'takewell/v1/n1/readings', lines);
  const after = await openTestApp({ environment, folder: before.folder });
  await expectStored(
    after,
    lines.map((_, n) => START + n),
  );
});

it('starts before its broker does, says so, and follows it when it comes', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  await mosquitto.stop('SIGTERM');
  const test = await openTestApp({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  const { status, body } = await test.api.get('/health');
  expect(status).toBe(503);
  expect(body).toMatchObject({ live: true, ready: false, problems: [{ code: 'broker' }] });
  await mosquitto.start();
  await untilReady(test.api);
});

it('can be stopped while its broker is away', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const test = await openTestApp({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(test.api);
  await mosquitto.stop('SIGKILL');
  await expect.poll(async () => (await test.api.get('/health')).status, LONG).toBe(503);
  await test.app.close();
  await expect(test.api.get('/health')).rejects.toThrow();
});
