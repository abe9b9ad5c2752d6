// The disk is full: nothing that was acknowledged is lost, nothing is acknowledged that is not stored, it is said, and when there is room
// again everything goes on by itself.
import { expect, it } from 'vitest';
import type { Health } from '../../shared/api/health.ts';
import { connectNode } from '../support/connect-node.ts';
import { makeFullStore } from '../support/fill-disk.ts';
import { openMosquitto } from '../support/mosquitto.ts';
import { openTestApp, type TestApp } from '../support/open-test-app.ts';

const START = 1_750_000_000;
const PACKS = 100;
const PACK = 100;

/** Each pack takes a page or two: a few dozen find room. */
const packs = Array.from({ length: PACKS }, (_, n) =>
  Array.from({ length: PACK }, (_, i) => ({ temperature: 21, humidity: 95, time: START + n * PACK + i })),
);

const stored = ({ app }: TestApp) => app.store.readings.countAll();
const untilFull = ({ app }: TestApp) =>
  expect.poll(() => app.intake.trouble()?.code, { timeout: 20_000 }).toBe('store-full');

/** Sends all packs at once; counts what is acknowledged. */
function sendPacks(send: (pack: unknown) => Promise<unknown>) {
  const acknowledged: number[] = [];
  const outcome = Promise.allSettled(packs.map((pack, n) => send(pack).then(() => acknowledged.push(n))));
  return { acknowledged, outcome };
}

it('keeps readings waiting, unacknowledged, says store-full, and stores and acknowledges all of them when there is room', async () => {
  const full = await makeFullStore({ sparePages: 40 });
  const test = await openTestApp({ folder: full.folder, store: { maxPages: full.maxPages } });
  const node = await connectNode(test.app.mqttPort, 'n1');
  const { acknowledged, outcome } = sendPacks(node.send);
  await untilFull(test);
  const during = await test.api.get<Health>('/health');
  expect(during.status).toBe(503);
  expect(during.body).toMatchObject({ live: true, ready: false, problems: [{ code: 'store-full' }] });
  const kept = await stored(test);
  expect(kept).toBeLessThan(PACKS * PACK);
  await expect.poll(() => acknowledged.length * PACK).toBe(kept);
  full.makeRoom();
  await outcome;
  expect(acknowledged).toHaveLength(PACKS);
  expect(await stored(test)).toBe(PACKS * PACK);
  expect((await test.api.get<Health>('/health')).body.problems.map(({ code }) => code)).not.toContain('store-full');
  expect(test.app.intake.waiting()).toBe(0);
});

it('can be stopped meanwhile: what was not acknowledged is sent again to the service that is started with room', async () => {
  const full = await makeFullStore({ sparePages: 40 });
  const before = await openTestApp({ folder: full.folder, store: { maxPages: full.maxPages } });
  const will = { topic: 'takewell/v1/n1/status', payload: Buffer.from('offline'), qos: 1 as const, retain: true };
  const node = await connectNode(before.app.mqttPort, 'n1', { will });
  const { acknowledged, outcome } = sendPacks(node.send);
  await untilFull(before);
  await before.app.close();
  await node.client.endAsync(true);
  await outcome;
  const lost = packs.filter((_, n) => !acknowledged.includes(n));
  expect(lost.length).toBeGreaterThan(0);
  const after = await openTestApp({ folder: full.folder });
  expect(await stored(after)).toBeGreaterThanOrEqual(acknowledged.length * PACK);
  const again = await connectNode(after.app.mqttPort, 'n1');
  for (const pack of lost) await again.send(pack);
  expect(await stored(after)).toBe(PACKS * PACK);
});

it('leaves readings with an outside broker, which hands them over when there is room', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const full = await makeFullStore({ sparePages: 40 });
  const environment = { TAKEWELL_MQTT_URL: mosquitto.url };
  const test = await openTestApp({ folder: full.folder, store: { maxPages: full.maxPages }, environment });
  await expect.poll(async () => (await test.api.get<Health>('/health')).status, { timeout: 10_000 }).toBe(200);
  const node = await connectNode(mosquitto.port, 'n1');
  const { outcome } = sendPacks(node.send);
  await untilFull(test);
  await outcome;
  expect(await stored(test)).toBeLessThan(PACKS * PACK);
  full.makeRoom();
  await expect.poll(() => stored(test), { timeout: 30_000 }).toBe(PACKS * PACK);
});

it('can be stopped meanwhile with an outside broker: it keeps the rest for the service that is started with room', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const full = await makeFullStore({ sparePages: 40 });
  const environment = { TAKEWELL_MQTT_URL: mosquitto.url };
  const before = await openTestApp({ folder: full.folder, store: { maxPages: full.maxPages }, environment });
  await expect.poll(async () => (await before.api.get<Health>('/health')).status, { timeout: 10_000 }).toBe(200);
  const node = await connectNode(mosquitto.port, 'n1');
  const { outcome } = sendPacks(node.send);
  await untilFull(before);
  await outcome;
  await before.app.close();
  const after = await openTestApp({ folder: full.folder, environment });
  await expect.poll(() => stored(after), { timeout: 30_000 }).toBe(PACKS * PACK);
});
