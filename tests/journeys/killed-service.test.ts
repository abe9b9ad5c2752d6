// The real process is killed outright: the broker says so at once, and the start after it tells what nobody watched.
import mqtt from 'mqtt';
import { expect, it, onTestFinished } from 'vitest';
import { HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import { connectNode } from '../support/connect-node.ts';
import { untilReady } from '../support/health.ts';
import { openMosquitto } from '../support/mosquitto.ts';
import { makeTestFolder, signInManager, TEST_SETUP_CODE } from '../support/open-test-app.ts';
import { startService } from '../support/service-run.ts';
import { openWebhookReceiver } from '../support/webhook-receiver.ts';

const LONG = { timeout: 30_000, interval: 50 };

it('its last will says offline on an outside broker, and the next start says online', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const environment = {
    TAKEWELL_DATA_DIR: await makeTestFolder(),
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_URL: mosquitto.url,
    TAKEWELL_LOG_LEVEL: 'fatal',
  };
  const heard: string[] = [];
  const lamp = await mqtt.connectAsync(mosquitto.url);
  onTestFinished(() => lamp.endAsync(true));
  lamp.on('message', (_topic, payload) => heard.push(payload.toString()));
  await lamp.subscribeAsync('takewell/v1/service/status', { qos: 1 });
  const service = startService('server/main.ts', environment);
  await service.ready;
  await expect.poll(() => heard, LONG).toEqual(['online']);
  service.kill('SIGKILL');
  await service.ended;
  await expect.poll(() => heard, LONG).toEqual(['online', 'offline']);
  await startService('server/main.ts', environment).ready;
  await expect.poll(() => heard.at(-1), LONG).toBe('online');
});

it('47 minutes after it was killed one message tells of the gap, with what the nodes measured meanwhile', async () => {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  const environment = {
    TAKEWELL_DATA_DIR: await makeTestFolder(),
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
    TAKEWELL_SETUP_CODE: TEST_SETUP_CODE,
    TAKEWELL_LOG_LEVEL: 'fatal',
  };
  /** A life whose clock begins at an instant and runs twenty times as fast. */
  const live = async (startMs: number) => {
    const run = startService('tests/support/service-process.ts', environment, [startMs, Date.now(), 20].map(String));
    const { url, mqttPort } = JSON.parse(await run.ready);
    const api = await signInManager(url);
    await untilReady(api);
    return { run, api, node: await connectNode(mqttPort, 'n1') };
  };
  const startMs = Date.UTC(2026, 2, 2, 7);
  const first = await live(startMs);
  const chamberId = (await first.api.post<{ id: string }>('/chambers', { name: 'Tent 1' })).body.id;
  const probe = await first.api.post<{ id: string }>('/probes', { nodeId: 'n1', address: 'a', chamberId });
  await first.api.patch(`/probes/${probe.body.id}`, { silenceMinutes: 240 });
  const closedAt = utcText(startMs - 30 * HOUR_MS);
  const batch = { chamberId, profileId: 'tomato-common-practice', code: 'T-1', plants: 1000, closedAt };
  expect((await first.api.post('/batches', batch)).status).toBe(201);
  await first.api.put('/channels', { webhooks: [{ name: 'Hook', url: receiver.url, allowLocal: true }] });
  await first.node.send({ probe: 'a', temperature: 26, humidity: 95 });
  first.run.kill('SIGKILL');
  await first.run.ended;

  // Ten minutes well, half an hour too hot, well again; the node has kept it all.
  const backMs = startMs + 47 * MINUTE_MS;
  const minutes = Array.from({ length: 46 }, (_, n) => n + 1);
  const kept = minutes.map((minute) => ({
    ...{ probe: 'a', humidity: 95, time: utcText(startMs + minute * MINUTE_MS) },
    temperature: minute >= 10 && minute < 40 ? 28.6 : 26,
  }));
  const second = await live(backMs);
  await second.node.send(kept);
  await second.node.send({ probe: 'a', temperature: 26, humidity: 95 });
  const outages = () => receiver.calls.filter(({ message }) => message['kind'] === 'outage');
  await expect.poll(() => outages().length, LONG).toBe(1);
  const [told] = outages();
  expect(told?.text).toMatch(/Back after 4[67] min[^"]*Tent 1 was above 28 °C for (29|30|31) of them/i);
  // What was over by then is not told again as if it were new.
  expect(receiver.calls.filter(({ message }) => JSON.stringify(message).includes('"heat"'))).toEqual([]);
});
