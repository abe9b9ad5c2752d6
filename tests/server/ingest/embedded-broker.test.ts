// The broker inside the process on its loopback address, by real connections: what it takes, what it refuses on record, what ends a connection.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStoreToRead } from '../../../server/store/open-store.ts';
import type { NodeView, ProbeView, RefusedView } from '../../../shared/api/probes.ts';
import { connectNode, whenClosed } from '../../support/connect-node.ts';
import { openTestApp, type TestApp } from '../../support/open-test-app.ts';

const good = { temperature: 21.4, humidity: 93.1 };

const list = async <T>({ api }: TestApp, path: string) => (await api.get<{ items: T[] }>(path)).body.items;
const refusals = async (app: TestApp) =>
  (await list<RefusedView>(app, '/refused')).map(({ reason, where }) => ({ reason, where }));

describe('a reading with QoS 1', () => {
  it('is on the disk when it is acknowledged', async () => {
    const { app, folder } = await openTestApp();
    const node = await connectNode(app.mqttPort, 'n1');
    for (let n = 1; n <= 20; n += 1) {
      await node.send({ ...good, time: 1_750_000_000 + n });
      const onDisk = openStoreToRead(join(folder, 'takewell.sqlite'));
      await expect(onDisk.readings.countAll()).resolves.toBe(n);
      await onDisk.close();
    }
  });

  it('is stored once when it is sent twice, and with QoS 2 as well', async () => {
    const { app } = await openTestApp();
    const { client } = await connectNode(app.mqttPort, 'n1');
    const text = JSON.stringify({ ...good, time: '2026-03-02T07:00:00Z' });
    for (const qos of [0, 1, 1, 2, 2] as const) await client.publishAsync('takewell/v1/n1/readings', text, { qos });
    expect(await app.store.readings.countAll()).toBe(1);
  });
});

describe('an unknown node', () => {
  it('is discovered with its probes, which wait to be placed', async () => {
    const test = await openTestApp();
    const node = await connectNode(test.app.mqttPort, 'bench-4');
    await node.send([
      { ...good, probe: 'left' },
      { ...good, probe: 'right' },
    ]);
    expect(await list<ProbeView>(test, '/probes')).toMatchObject([
      { nodeId: 'bench-4', address: 'left', name: 'bench-4 left', chamberId: null, place: null, last: good },
      { nodeId: 'bench-4', address: 'right', name: 'bench-4 right', chamberId: null, place: null, last: good },
    ]);
    expect(await list<NodeView>(test, '/nodes')).toMatchObject([{ id: 'bench-4', status: 'unknown' }]);
  });

  it('is known by its status alone', async () => {
    const test = await openTestApp();
    const { client } = await connectNode(test.app.mqttPort, 'bench-4');
    await client.publishAsync('takewell/v1/bench-4/status', 'online', { qos: 1, retain: true });
    expect(await list<NodeView>(test, '/nodes')).toMatchObject([{ id: 'bench-4', status: 'online' }]);
  });

  it('is told offline by its last will when it falls silent', async () => {
    const test = await openTestApp();
    const topic = 'takewell/v1/bench-4/status';
    const will = { topic, payload: Buffer.from('offline'), qos: 1 as const, retain: true };
    const { client } = await connectNode(test.app.mqttPort, 'bench-4', { will });
    await client.publishAsync(topic, 'online', { qos: 1, retain: true });
    client.stream.destroy();
    await expect.poll(() => list<NodeView>(test, '/nodes')).toMatchObject([{ id: 'bench-4', status: 'offline' }]);
  });
});

describe('a payload that cannot be read', () => {
  it.each([
    ['is not JSON', '{"temperature": 21.4', 'The message is not JSON', ''],
    ['is not text', Buffer.from([0xff, 0xfe, 0x00]), 'The message is not UTF-8 text', ''],
    ['is empty', '', 'The message is empty', ''],
    ['holds nan, as small boards print it', '{"temperature": nan, "humidity": 93}', 'The message holds "nan"', ''],
    ['has NaN as a text', { ...good, humidity: 'NaN' }, 'The humidity is the text "NaN"', '/humidity'],
    ['has an infinite number', '{"temperature": 1e999}', 'The temperature is Infinity', '/temperature'],
    ['has a negative humidity', { ...good, humidity: -0.1 }, 'A humidity of -0.1 %RH is impossible', '/humidity'],
    ['has more than a wet sensor reads', { ...good, humidity: 110.1 }, 'A humidity of 110.1 %RH', '/humidity'],
    ['is in °F', { ...good, unit: '°F' }, '"unit" says °F', '/unit'],
    ['is SenML in °F', [{ n: 'temperature', u: 'degF', v: 70 }], 'Temperatures in °F', '/0'],
    ['is SenML in kelvin', [{ n: 'temperature', u: 'K', v: 294 }], 'The unit "K" is not admitted', '/0'],
    ['has neither value', { probe: 'a' }, 'The reading has neither', ''],
    ['is a list without readings', [], 'The list is empty', ''],
    ['is a number', '21.4', 'A reading is an object', ''],
  ])('is acknowledged and kept with its reason when it %s', async (_why, payload, reason, where) => {
    const test = await openTestApp();
    const node = await connectNode(test.app.mqttPort, 'n1');
    await node.send(payload);
    expect(await refusals(test)).toEqual([{ reason: expect.stringContaining(reason), where }]);
    await node.send(good);
    expect(await test.app.store.readings.countAll()).toBe(1);
  });

  it('is refused in part when only a part is wrong', async () => {
    const test = await openTestApp();
    const node = await connectNode(test.app.mqttPort, 'n1');
    await node.send([{ ...good, time: 1_750_000_000 }, { ...good, humidity: -5 }, { temperature: 22.5 }]);
    expect(await refusals(test)).toMatchObject([{ where: '/1/humidity' }]);
    expect(await test.app.store.readings.countAll()).toBe(2);
  });

  it('of 10 MB is refused by its size, its first 500 bytes are kept, and the next reading is stored', async () => {
    const test = await openTestApp();
    const node = await connectNode(test.app.mqttPort, 'n1');
    await node.send(`[${'{"temperature":21.4},'.repeat(500_000)}{"temperature":21.4}]`);
    const [kept] = await list<RefusedView>(test, '/refused');
    expect(kept?.reason).toContain('larger than 1 MiB');
    expect(kept?.payloadStart).toHaveLength(500);
    await node.send(good);
    expect(await test.app.store.readings.countAll()).toBe(1);
  });

  it('with a field of half a megabyte in its name is kept with the beginning of that place', async () => {
    const test = await openTestApp();
    const node = await connectNode(test.app.mqttPort, 'n1');
    await node.send({ temperature: 70, [`unit${'x'.repeat(500_000)}`]: 'F' });
    const [kept] = await list<RefusedView>(test, '/refused');
    expect(kept?.where).toMatch(/^\/unitx{194}…$/);
  });

  it('is kept with the last 200 of its kind', async () => {
    const test = await openTestApp();
    const { client } = await connectNode(test.app.mqttPort, 'n1');
    const refused = Array.from({ length: 205 }, (_, n) => client.publishAsync('nobody/reads', `x${n}`, { qos: 1 }));
    await Promise.all(refused);
    const kept = await list<RefusedView>(test, '/refused');
    expect(kept.map(({ payloadStart }) => payloadStart)).toEqual(Array.from({ length: 200 }, (_, n) => `x${204 - n}`));
  });
});

describe('a topic', () => {
  it('that nobody reads is refused on record, and the connection stays', async () => {
    const test = await openTestApp();
    const { client } = await connectNode(test.app.mqttPort, 'n1');
    await client.publishAsync('takewell/v2/n1/readings', JSON.stringify(good), { qos: 1 });
    const [kept] = await list<RefusedView>(test, '/refused');
    expect(kept).toMatchObject({ topic: 'takewell/v2/n1/readings', payloadStart: JSON.stringify(good) });
    expect(client.connected).toBe(true);
  });

  it.each([
    ['the broker’s own branch', '$SYS/broker/clients'],
    ['the service’s status', 'takewell/v1/service/status'],
    ['the state of a chamber', 'takewell/v1/chambers/c1/state'],
  ])('that only Takewell may speak on ends the connection, and nobody hears it: %s', async (_why, topic) => {
    const test = await openTestApp();
    const listener = await connectNode(test.app.mqttPort, 'listener');
    const heard: string[] = [];
    listener.client.on('message', (from, payload) => heard.push(`${from}: ${payload}`));
    await listener.client.subscribeAsync([topic, 'done'], { qos: 1 });
    const intruder = await connectNode(test.app.mqttPort, 'intruder');
    const closed = whenClosed(intruder.client);
    intruder.client.publish(topic, 'forged', { qos: 1, retain: true });
    await closed;
    await listener.client.publishAsync('done', '', { qos: 1 });
    await expect.poll(() => heard).toContain('done: ');
    expect(heard.filter((one) => one.endsWith('forged'))).toEqual([]);
  });

  it('of Takewell’s own keeps its last word for whoever comes later', async () => {
    const { app, api } = await openTestApp();
    const { body } = await api.post<{ id: string }>('/chambers', { name: 'Tent 1' });
    const { client } = await connectNode(app.mqttPort, 'siren');
    const heard = new Map<string, string>();
    client.on('message', (topic, payload) => heard.set(topic, String(payload)));
    await client.subscribeAsync(['takewell/v1/chambers/+/state', 'takewell/v1/service/status'], { qos: 1 });
    await expect.poll(() => heard.get('takewell/v1/service/status')).toBe('online');
    await expect.poll(() => heard.get(`takewell/v1/chambers/${body.id}/state`)).toContain('"chamber":"Tent 1"');
  });
});
