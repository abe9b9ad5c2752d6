// The service as a guest of an outside broker: what it says there, what it follows, and how it leaves.
import { describe, expect, it } from 'vitest';
import type { RefusedView } from '../../../shared/api/probes.ts';
import type { SiteSettings } from '../../../shared/api/telling.ts';
import { connectNode } from '../../support/connect-node.ts';
import { untilReady } from '../../support/health.ts';
import { openMosquitto } from '../../support/mosquitto.ts';
import { openTestApp } from '../../support/open-test-app.ts';

async function openGuest() {
  const mosquitto = await openMosquitto({ persistence: false });
  const test = await openTestApp({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(test.api);
  const { client } = await connectNode(mosquitto.port, 'onlooker');
  const heard = new Map<string, string>();
  client.on('message', (topic, payload) => heard.set(topic, String(payload)));
  await client.subscribeAsync('takewell/v1/#', { qos: 1 });
  const refused = async () => (await test.api.get<{ items: RefusedView[] }>('/refused')).body.items;
  return { ...test, mosquitto, client, heard, refused, stored: () => test.app.store.readings.countAll() };
}

const SERVICE = 'takewell/v1/service/status';

describe('openBrokerClient', () => {
  it('says that the service is online, tells the state of a chamber, and says offline when it leaves', async () => {
    const { app, api, heard } = await openGuest();
    await expect.poll(() => heard.get(SERVICE)).toBe('online');
    const { body } = await api.post<{ id: string }>('/chambers', { name: 'Tent 1' });
    await expect.poll(() => heard.get(`takewell/v1/chambers/${body.id}/state`)).toContain('"chamber":"Tent 1"');
    await app.close();
    await expect.poll(() => heard.get(SERVICE)).toBe('offline');
  });

  it('does not take its own words for messages that nobody reads', async () => {
    const { api, client, heard, refused, stored } = await openGuest();
    const { body } = await api.get<SiteSettings>('/settings');
    const everything = { filter: '#', node: 'everything', temperature: { pointer: '/t', unit: 'Cel' } };
    expect((await api.put('/settings', { ...body, mappings: [everything] })).status).toBe(200);
    await api.post('/chambers', { name: 'Tent 1' });
    await expect.poll(() => [...heard.keys()].filter((topic) => topic.endsWith('/state')).length).toBe(1);
    await client.publishAsync('somewhere', '{"t": 21}', { qos: 1 });
    await expect.poll(stored).toBe(1);
    expect(await refused()).toEqual([]);
  });

  it('follows a mapping from the moment it is set up to the moment it is taken away', async () => {
    const { api, client, stored, refused } = await openGuest();
    const { body } = await api.get<SiteSettings>('/settings');
    const mapping = { filter: 'weather/+', node: 'level:1', temperature: { pointer: '/t', unit: 'Cel' } };
    const publish = (t: number) => client.publishAsync('weather/mast', JSON.stringify({ t }), { qos: 1 });
    await publish(1);
    await api.put('/settings', { ...body, mappings: [mapping] });
    await publish(2);
    await expect.poll(stored).toBe(1);
    await api.put('/settings', { ...body, mappings: [] });
    await publish(3);
    // Messages come in their order: when this one is there, that one is not to come any more.
    await client.publishAsync('takewell/v1/n1/readings', '{"temperature": 4}', { qos: 1 });
    await expect.poll(stored).toBe(2);
    expect(await refused()).toEqual([]);
  });
});
