// Nobody takes a critical alarm: the siren sounds with no internet and nobody to push to, until somebody does. What a lamp on the same broker
// would read is read by a client that comes afresh.
import mqtt from 'mqtt';
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { untilReady } from '../support/health.ts';
import { openMosquitto } from '../support/mosquitto.ts';
import { openBatch, openTent, type Tent } from '../support/open-tent.ts';

interface Site {
  readonly tent: Tent;
  readonly port: number;
}

async function openOutside(): Promise<Site> {
  const mosquitto = await openMosquitto({ persistence: false });
  const tent = await openTent({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(tent.api);
  return { tent, port: mosquitto.port };
}

async function openEmbedded(): Promise<Site> {
  const tent = await openTent();
  return { tent, port: tent.app.mqttPort ?? 0 };
}

/** What is retained for a client that subscribes now. */
async function readSiren(
  port: number,
): Promise<{ state: string; reason: { on: boolean; alarms: { rule: string }[] } }> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`);
  const heard = new Map<string, string>();
  client.on('message', (topic, payload, { retain }) => {
    if (retain) heard.set(topic, payload.toString());
  });
  await client.subscribeAsync(['takewell/v1/siren', 'takewell/v1/siren/reason'], { qos: 1 });
  await expect.poll(() => heard.size).toBe(2);
  await client.endAsync();
  return {
    state: heard.get('takewell/v1/siren') ?? '',
    reason: JSON.parse(heard.get('takewell/v1/siren/reason') ?? '{}'),
  };
}

const stateOf = async ({ port }: Site) => (await readSiren(port)).state;

describe.each([
  ['an outside mosquitto', openOutside],
  ['the embedded broker', openEmbedded],
])('on %s', (_, open) => {
  it('the siren is off, sounds after twenty minutes, and is off again once somebody has taken it', async () => {
    const site = await open();
    const { tent } = site;
    await openBatch(tent);
    expect(await stateOf(site)).toBe('off');
    await tent.stay(31, 19 * MINUTE_MS);
    expect(await stateOf(site)).toBe('off');
    await tent.stay(31, 4 * MINUTE_MS);
    await expect.poll(() => stateOf(site)).toBe('on');
    expect(await readSiren(site.port)).toMatchObject({
      reason: { on: true, alarms: [{ rule: 'heat', chamber: 'Tent 1', batch: 'T-1', priority: 'critical' }] },
    });
    for (const { id } of await tent.alarms()) await tent.api.post(`/alarms/${id}/acknowledge`);
    await expect.poll(() => stateOf(site)).toBe('off');
    expect((await readSiren(site.port)).reason).toEqual({ on: false, alarms: [] });
  });

  it('a siren that nothing asks for any more is silenced when the service starts', async () => {
    const site = await open();
    await openBatch(site.tent);
    await site.tent.stay(31, 23 * MINUTE_MS);
    await expect.poll(() => stateOf(site)).toBe('on');
    const again = await site.tent.reopen(MINUTE_MS);
    const here = { tent: again, port: again.app.mqttPort ?? site.port };
    // Nothing was taken: it goes on.
    await expect.poll(() => stateOf(here)).toBe('on');
    for (const { id } of await again.alarms())
      await again.api.post(`/alarms/${id}/shelve`, { minutes: 60, reason: 'the shade is being mended' });
    await expect.poll(() => stateOf(here)).toBe('off');
  });

  it('a siren that is switched off under Channels stays silent', async () => {
    const site = await open();
    await site.tent.api.put('/channels', { siren: { enabled: false } });
    await openBatch(site.tent);
    await site.tent.stay(31, 23 * MINUTE_MS);
    await site.tent.app.tick();
    expect(await stateOf(site)).toBe('off');
  });
});

it('an acknowledgement that runs out asks anew, from the beginning', async () => {
  const tent = await openTent();
  await openBatch(tent);
  await tent.stay(31, 5 * MINUTE_MS);
  for (const { id } of await tent.alarms()) await tent.api.post(`/alarms/${id}/acknowledge`);
  await tent.stay(31, 29 * MINUTE_MS);
  const heat = async () => (await tent.alarms()).find(({ rule }) => rule === 'heat');
  expect(await heat()).toMatchObject({ state: 'acknowledged' });
  await tent.stay(31, 2 * MINUTE_MS);
  expect(await heat()).toMatchObject({ state: 'unacknowledged', acknowledgedBy: null });
  await tent.stay(31, HOUR_MS / 3 + MINUTE_MS);
  expect(await stateOf({ tent, port: tent.app.mqttPort ?? 0 })).toBe('on');
});
