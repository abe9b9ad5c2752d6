// The embedded broker on an address that the network reaches: a node signs in with its own name and password, and speaks for itself only.
import mqtt, { type IClientOptions } from 'mqtt';
import { describe, expect, it } from 'vitest';
import type { NodeView } from '../../../shared/api/probes.ts';
import { connectNode, whenClosed } from '../../support/connect-node.ts';
import { openTestApp, type TestApp } from '../../support/open-test-app.ts';

const good = { temperature: 21.4, humidity: 93.1 };
const openOnNetwork = () => openTestApp({ environment: { TAKEWELL_MQTT_HOST: '0.0.0.0' } });

/** Makes a node with credentials, as a manager does. */
async function makeNode({ api }: TestApp, id: string): Promise<{ username: string; password: string }> {
  await api.post('/nodes', { id });
  const { body } = await api.post<{ name: string; password: string }>(`/nodes/${id}/credentials`);
  return { username: body.name, password: body.password };
}

const nodes = async ({ api }: TestApp) => (await api.get<{ items: NodeView[] }>('/nodes')).body.items;
const stored = ({ app }: TestApp) => app.store.readings.countAll();

describe('signing in', () => {
  it('lets a node in with the name and password that were shown once, and stores what it sends', async () => {
    const test = await openOnNetwork();
    const node = await connectNode(test.app.mqttPort, 'n1', await makeNode(test, 'n1'));
    await node.send(good);
    expect(await stored(test)).toBe(1);
  });

  it.each([
    ['without a name', () => ({})],
    ['with a wrong password', ({ username }) => ({ username, password: 'guess' })],
    ['with an empty password', ({ username }) => ({ username, password: '' })],
    ['with a name nobody has made', ({ password }) => ({ username: 'n9', password })],
    ['as a node that has no password yet', () => ({ username: 'n2', password: '' })],
  ] as [string, (own: { username: string; password: string }) => IClientOptions][])(
    'refuses whoever comes %s',
    async (_why, credentials) => {
      const test = await openOnNetwork();
      const own = await makeNode(test, 'n1');
      await test.api.post('/nodes', { id: 'n2' });
      const connecting = mqtt.connectAsync(`mqtt://127.0.0.1:${test.app.mqttPort}`, {
        reconnectPeriod: 0,
        ...credentials(own),
      });
      // MQTT 3.1.1 §3.2.2.3: 5 = not authorised.
      await expect(connecting).rejects.toMatchObject({ code: 5 });
    },
  );

  it('refuses the old password after new credentials were made', async () => {
    const test = await openOnNetwork();
    const old = await makeNode(test, 'n1');
    const { body } = await test.api.post<{ password: string }>('/nodes/n1/credentials');
    const url = `mqtt://127.0.0.1:${test.app.mqttPort}`;
    await expect(mqtt.connectAsync(url, { reconnectPeriod: 0, ...old })).rejects.toMatchObject({ code: 5 });
    const node = await connectNode(test.app.mqttPort, 'n1', { username: 'n1', password: body.password });
    await node.send(good);
    expect(await stored(test)).toBe(1);
  });
});

describe('publishing', () => {
  it.each([
    ['the readings of another node', 'takewell/v1/n2/readings'],
    ['the status of another node', 'takewell/v1/n2/status'],
    ['a topic of somebody else', 'weather/outside'],
    ['the state of a chamber', 'takewell/v1/chambers/c1/state'],
    ['the broker’s own branch', '$SYS/broker/clients'],
  ])('is allowed on the node’s own topics only: %s ends the connection', async (_why, topic) => {
    const test = await openOnNetwork();
    await makeNode(test, 'n2');
    const node = await connectNode(test.app.mqttPort, 'n1', await makeNode(test, 'n1'));
    const closed = whenClosed(node.client);
    node.client.publish(topic, topic.endsWith('status') ? 'offline' : JSON.stringify(good), { qos: 1 });
    await closed;
    expect(await stored(test)).toBe(0);
    expect((await nodes(test)).map(({ status }) => status)).toEqual(['unknown', 'unknown']);
  });

  it('holds for last wills: one for another node is not heard', async () => {
    const test = await openOnNetwork();
    const own = await makeNode(test, 'n1');
    const second = await makeNode(test, 'n2');
    const will = { payload: Buffer.from('offline'), qos: 1 as const, retain: true };
    const forger = await connectNode(test.app.mqttPort, 'n2', {
      ...second,
      will: { ...will, topic: 'takewell/v1/n1/status' },
    });
    const honest = await connectNode(test.app.mqttPort, 'n1', {
      ...own,
      will: { ...will, topic: 'takewell/v1/n1/status' },
    });
    await honest.client.publishAsync('takewell/v1/n1/status', 'online', { qos: 1 });
    forger.client.stream.destroy();
    const third = await connectNode(test.app.mqttPort, 'n2', second);
    await third.send(good);
    expect((await nodes(test))[0]).toMatchObject({ id: 'n1', status: 'online' });
    honest.client.stream.destroy();
    await expect.poll(async () => (await nodes(test))[0]?.status).toBe('offline');
  });
});

describe('subscribing', () => {
  it.each([
    ['what Takewell tells', 'takewell/v1/chambers/+/state', true],
    ['whether the service is up', 'takewell/v1/service/status', true],
    ['the readings of others', 'takewell/v1/+/readings', false],
    ['everything', '#', false],
  ])('a node may follow what Takewell publishes and nothing else: %s', async (_why, filter, isAllowed) => {
    const test = await openOnNetwork();
    const { client } = await connectNode(test.app.mqttPort, 'n1', await makeNode(test, 'n1'));
    const granted = await client.subscribeAsync(filter, { qos: 1 }).catch((error: Error) => error.message);
    // MQTT 3.1.1 §3.9.3: 128 = failure.
    if (isAllowed) expect(granted).toMatchObject([{ topic: filter, qos: 1 }]);
    else expect(JSON.stringify(granted)).toMatch(/128|Unspecified error/);
    expect(client.connected).toBe(true);
  });
});
