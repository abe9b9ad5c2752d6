// A manager tries the siren: it sounds for a moment and is off again, whatever happens meanwhile; and what is said of it is no more than is known.
import { describe, expect, it } from 'vitest';
import type { DeliveryResult } from '../../shared/api/telling.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { runTakewell } from '../server/cli/run-takewell.ts';
import { createApiClient } from '../support/api-client.ts';
import { untilReady } from '../support/health.ts';
import { type Mosquitto, openMosquitto } from '../support/mosquitto.ts';
import { openBatch, openTent, type Tent, type TentOptions } from '../support/open-tent.ts';
import { makeTestFolder, openTestApp, signInManager, TEST_SETUP_CODE } from '../support/open-test-app.ts';
import { startService } from '../support/service-run.ts';
import { openLamp, retainedSiren } from '../support/siren-lamp.ts';

interface Site {
  readonly tent: Tent;
  readonly port: number;
}

async function openOutside(options: TentOptions = {}): Promise<Site & { mosquitto: Mosquitto }> {
  const mosquitto = await openMosquitto({ persistence: true });
  const tent = await openTent({ ...options, environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(tent.api);
  await tent.app.tick();
  return { tent, port: mosquitto.port, mosquitto };
}

async function openEmbedded(options: TentOptions = {}): Promise<Site> {
  const tent = await openTent(options);
  return { tent, port: tent.app.mqttPort ?? 0 };
}

const trySiren = async ({ api }: Pick<Tent, 'api'>) =>
  (await api.post<DeliveryResult>('/channels/test', { channel: 'siren' })).body;

/** Longer than any test waits: it ends by something else. */
const LONG_MS = 600_000;

describe.each([
  ['an outside mosquitto', openOutside, 'nor whether it sounded'],
  ['the embedded broker', openEmbedded, 'One connection follows its topic.'],
])('on %s', (_, open, known) => {
  it('sounds and is off again, and what the broker acknowledged is said with the second', async () => {
    const { tent, port } = await open({ sirenTrialMs: 50 });
    const lamp = await openLamp(port);
    const result = await trySiren(tent);
    expect(result).toMatchObject({ delivered: true, reason: expect.stringContaining(known) });
    expect(result.reason).toMatch(/^The broker acknowledged “on” at 12:00:\d\d and “off” at 12:00:\d\d\. /);
    await expect.poll(() => lamp.heard.slice(0, 3)).toEqual(['off', 'on', 'off']);
    expect(lamp.reasons).toContainEqual({ on: true, test: true, alarms: [] });
    await expect.poll(() => lamp.reasons.at(-1)).toEqual({ on: false, alarms: [] });
    expect(await retainedSiren(port)).toBe('off');
  });

  it('gives way to an alarm, which the lamp follows without going dark between', async () => {
    const { tent, port } = await open({ sirenTrialMs: LONG_MS });
    const lamp = await openLamp(port);
    await openBatch(tent);
    await tent.stay(31, 19 * MINUTE_MS);
    const tried = trySiren(tent);
    await expect.poll(() => lamp.heard).toContain('on');
    await tent.stay(31, 4 * MINUTE_MS);
    expect((await tried).reason).toContain('Then an alarm took over');
    await expect.poll(() => lamp.reasons.at(-1)).toMatchObject({ on: true, alarms: [{ rule: 'heat' }] });
    expect(lamp.heard.slice(lamp.heard.indexOf('on'))).not.toContain('off');
    expect(await retainedSiren(port)).toBe('on');
    expect(await trySiren(tent)).toMatchObject({ delivered: false, reason: expect.stringContaining('for an alarm') });
    for (const { id } of await tent.alarms()) await tent.api.post(`/alarms/${id}/acknowledge`);
    await expect.poll(() => lamp.heard.at(-1)).toBe('off');
  });

  it('is ended by rounds in which nothing is wrong as little as by another who tries it', async () => {
    const { tent, port } = await open({ sirenTrialMs: 300 });
    const lamp = await openLamp(port);
    const both = Promise.all([trySiren(tent), trySiren(tent)]);
    await expect.poll(() => lamp.heard.at(-1)).toBe('on');
    await tent.app.tick();
    const [one, other] = await both;
    expect(one).toEqual(other);
    expect(lamp.heard.filter((state) => state === 'on')).toHaveLength(1);
    await expect.poll(() => lamp.heard.at(-1)).toBe('off');
  });

  it('is off again when the service is stopped meanwhile', async () => {
    const { tent, port } = await open({ sirenTrialMs: LONG_MS });
    const lamp = await openLamp(port);
    const tried = trySiren(tent).catch(() => 'broken off');
    await expect.poll(() => lamp.heard.at(-1)).toBe('on');
    await tent.app.close();
    await tried;
    await expect.poll(() => lamp.heard.at(-1)).toBe('off');
  });

  it('sounds nothing while the siren is switched off, and says so', async () => {
    const { tent, port } = await open({ sirenTrialMs: 50 });
    const lamp = await openLamp(port);
    await tent.api.put('/channels', { siren: { enabled: false } });
    expect(await trySiren(tent)).toMatchObject({ delivered: false, reason: expect.stringContaining('switched off') });
    expect(lamp.heard).not.toContain('on');
  });
});

it('says that nothing follows the topic of the embedded broker', async () => {
  const { tent } = await openEmbedded({ sirenTrialMs: 50 });
  const result = await trySiren(tent);
  expect(result).toMatchObject({ delivered: false, reason: expect.stringContaining('Nothing follows its topic') });
});

it('says it in the language of whoever asks', async () => {
  const { tent } = await openEmbedded({ sirenTrialMs: 50 });
  await tent.api.patch('/people/me', { language: 'nl' });
  expect((await trySiren(tent)).reason).toContain('Niets volgt het topic');
});

it('says that the broker is not reached', async () => {
  const { tent, mosquitto } = await openOutside({ sirenTrialMs: 50 });
  await mosquitto.stop('SIGKILL');
  await expect.poll(async () => (await tent.api.get('/health')).status, { timeout: 20_000 }).toBe(503);
  expect(await trySiren(tent)).toMatchObject({ delivered: false, reason: expect.stringContaining('did not take it') });
});

it('is taken back by the service when the broker was stopped meanwhile and has kept “on”', async () => {
  const { tent, port, mosquitto } = await openOutside({ sirenTrialMs: LONG_MS });
  const lamp = await openLamp(port);
  const tried = trySiren(tent);
  await expect.poll(() => lamp.heard.at(-1)).toBe('on');
  await mosquitto.stop('SIGTERM');
  await tent.api.put('/channels', { siren: { enabled: true } });
  await mosquitto.start();
  await untilReady(tent.api);
  // The connection that held it is gone: the test is over at once.
  expect((await tried).reason).toContain('but not “off”');
  await tent.app.tick();
  await expect.poll(() => retainedSiren(port)).toBe('off');
});

it('goes out by the last will when the service is killed meanwhile, with nobody to start it again', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const service = startService('server/main.ts', {
    TAKEWELL_DATA_DIR: await makeTestFolder(),
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_URL: mosquitto.url,
    TAKEWELL_SETUP_CODE: TEST_SETUP_CODE,
  });
  const url = /http\S+/.exec(await service.ready)?.[0] ?? '';
  const api = await signInManager(url);
  await untilReady(api);
  const lamp = await openLamp(mosquitto.port);
  const tried = api.post('/channels/test', { channel: 'siren' }).catch(() => 'broken off');
  await expect.poll(() => lamp.heard.at(-1)).toBe('on');
  service.kill('SIGKILL');
  await service.ended;
  await tried;
  await expect.poll(() => lamp.heard.at(-1)).toBe('off');
  expect(await retainedSiren(mosquitto.port)).toBe('off');
});

it('is a manager’s: the crew and a token hear why not', async () => {
  const { tent } = await openEmbedded({ sirenTrialMs: 50 });
  const crew = { name: 'Noor', password: 'a password of the crew' };
  await tent.api.post('/people', { ...crew, role: 'crew' });
  const noor = createApiClient(tent.app.url);
  await noor.post('/session', crew);
  expect((await noor.post('/channels/test', { channel: 'siren' })).status).toBe(403);
  expect((await noor.post('/channels/test', { channel: 'heartbeat' })).status).toBe(403);
});

describe('from the command line', () => {
  it('the running service tries it and answers', async () => {
    const { app, folder } = await openTestApp({ sirenTrialMs: 50, roundMs: 50 });
    const lamp = await openLamp(app.mqttPort ?? 0);
    const { code, stdout } = await runTakewell(['test-alert', '--channel', 'siren', '--json'], { dataDir: folder });
    expect({ code, results: JSON.parse(stdout).results }).toMatchObject({
      code: 0,
      results: [{ channel: 'siren', delivered: true, reason: expect.stringContaining('One connection follows') }],
    });
    expect(lamp.heard.filter((state) => state === 'on')).toHaveLength(1);
    await expect.poll(() => lamp.heard.at(-1)).toBe('off');
  });

  it('without a running service it says what to do, and leaves nothing that would sound later', {
    timeout: 60_000,
  }, async () => {
    const { app, folder } = await openTestApp();
    await app.close();
    const { code, stderr } = await runTakewell(['test-alert', '--channel', 'siren'], { dataDir: folder });
    expect({ code, stderr }).toEqual({ code: 1, stderr: expect.stringContaining('start it') });
    const again = await openTestApp({ folder, sirenTrialMs: 50 });
    const lamp = await openLamp(again.app.mqttPort ?? 0);
    await again.app.tick();
    await again.app.tick();
    expect(lamp.heard).toEqual(['off']);
  });
});
