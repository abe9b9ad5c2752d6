// A site with one tent at healing day 2, as its crew would set it up: a node with two probes, a batch, a phone and a webhook. All of it is
// real but time.
import mqtt from 'mqtt';
import { onTestFinished } from 'vitest';
import type { AlarmView } from '../../shared/api/alarms.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';
import type { ProbeView } from '../../shared/api/probes.ts';
import { HOUR_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { answerChecks } from './answer-checks.ts';
import { openTestApp } from './open-test-app.ts';
import { openPushEndpoint } from './push-endpoint.ts';
import { createTestClock } from './test-clock.ts';
import { openWebhookReceiver } from './webhook-receiver.ts';

/** 12:00 at the site. */
export const START_MS = Date.parse('2026-04-08T10:00:00Z');
export const CREW = { name: 'Test crew', password: 'a password for the crew' };
/** Between two readings: a ramp of 0.1 °C a reading is 0.4 °C a minute, as a tent in the sun. */
export const STEP_MS = 15 * SECOND_MS;

export type TentSite = Awaited<ReturnType<typeof openTentSite>>;

/**
 * Opens the site at `START_MS` with a tent of 26 °C and 96 %RH, closed since 30 hours. Its crew has looked when it was due, or, with
 * `hasLooked` false, has told of the batch at its closing and looked at nothing since.
 */
export async function openTentSite({ hasLooked = true } = {}) {
  const clock = createTestClock(START_MS);
  const { app, api, folder } = await openTestApp({ clock });
  const site = { siteName: 'Test site', zone: 'Europe/Amsterdam', altitudeM: 0, temperatureUnit: '°C', mappings: [] };
  await api.put('/settings', site);
  await api.post('/people', { ...CREW, role: 'crew' });
  const push = await openPushEndpoint();
  const webhook = await openWebhookReceiver('secret of the webhook');
  onTestFinished(push.close);
  onTestFinished(webhook.close);
  await api.post('/phones', { name: 'Phone of the crew', subscription: push.subscribe() });
  const hook = { name: 'Hook', url: webhook.url, secret: 'secret of the webhook', allowLocal: true };
  await api.put('/channels', { webhooks: [hook] });

  const node = await mqtt.connectAsync(`mqtt://127.0.0.1:${app.mqttPort}`);
  onTestFinished(() => node.endAsync().then(() => undefined));
  const measured: { readonly at: string; readonly temperature: number }[] = [];
  /** Both probes measure at the clock's instant; resolves when the readings are stored and judged. */
  const measure = async (temperature: number) => {
    const time = utcText(clock.nowMs());
    const probes = [
      { probe: 'canopy-1', time, temperature, humidity: 96 },
      { probe: 'canopy-2', time, temperature: hundredths(temperature - 0.2), humidity: 96.4 },
    ];
    await node.publishAsync('takewell/v1/tent-node/readings', JSON.stringify(probes), { qos: 1 });
    measured.push({ at: time, temperature });
  };
  await measure(26);
  const chamberId = (await api.post<{ id: string }>('/chambers', { name: 'Tent 1' })).body.id;
  for (const { id } of (await api.get<{ items: ProbeView[] }>('/probes')).body.items)
    await api.patch(`/probes/${id}`, { chamberId, place: 'canopy' });
  const closedAt = utcText(START_MS - 30 * HOUR_MS);
  const batch = { chamberId, profileId: 'tomato-common-practice', code: 'B-17', plants: 2000, closedAt };
  if (!hasLooked) clock.set(START_MS - 30 * HOUR_MS);
  const batchId = (await api.post<{ id: string }>('/batches', batch)).body.id;
  clock.set(START_MS);

  if (hasLooked) await answerChecks(api, batchId, START_MS);

  const chamber = async () => (await api.get<ChamberView>(`/chambers/${chamberId}`)).body;
  return {
    ...{ app, api, folder, clock, push, webhook, batchId, measured, chamber },
    heat: async (): Promise<AlarmView | undefined> => (await chamber()).alarms.find(({ rule }) => rule === 'heat'),
    /** Goes on to an instant without a reading, as a round of the watch does. */
    async waitUntil(ms: number) {
      clock.set(ms);
      await app.tick();
    },
    /** Warms or cools by 0.1 °C a reading until the hotter probe measures `to`. */
    async ramp(from: number, to: number) {
      const step = Math.sign(to - from) / 10;
      for (let temperature = from; temperature !== to; ) {
        temperature = hundredths(temperature + step);
        clock.advance(STEP_MS);
        await measure(temperature);
        await app.tick();
      }
    },
    /** Stays at a temperature for so many readings. */
    async stay(temperature: number, readings: number) {
      for (let reading = 0; reading < readings; reading += 1) {
        clock.advance(STEP_MS);
        await measure(temperature);
        await app.tick();
      }
    },
  };
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
