// The disk itself is full, not only the database: the system refuses each write. The ballast is given up and carries the service on; when that is
// used up too, what cannot be stored is not acknowledged and it is told all the same; with room everything goes on by itself.
import { expect, it, onTestFinished } from 'vitest';
import { SERVICE_ID } from '../../shared/alarms/alarm.ts';
import type { AlarmView } from '../../shared/api/alarms.ts';
import type { Health } from '../../shared/api/health.ts';
import { connectNode } from '../support/connect-node.ts';
import { makeTestFolder, signInManager, TEST_SETUP_CODE } from '../support/open-test-app.ts';
import { startService } from '../support/service-run.ts';
import { describeSmallDisk } from '../support/small-disk.ts';
import { openWebhookReceiver } from '../support/webhook-receiver.ts';

/** The ballast is less than a tenth of it, so that the disk stays nearly full when it is given up. */
const DISK_MB = 96;
const PACK = 1_000;
const START = Date.UTC(2026, 2, 2, 7);
const LONG = { timeout: 30_000, interval: 50 };

async function openOnSmallDisk() {
  const folder = await makeTestFolder();
  let pid = 0;
  const disk = describeSmallDisk(folder, DISK_MB, () => pid);
  const environment = {
    TAKEWELL_DATA_DIR: folder,
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
    TAKEWELL_SETUP_CODE: TEST_SETUP_CODE,
    TAKEWELL_LOG_LEVEL: 'fatal',
  };
  // A minute of its clock passes in a second: an alarm waits for one.
  const args = [START, Date.now(), 60].map(String);
  const service = startService('tests/support/service-process.ts', environment, args, disk.within);
  pid = service.pid;
  const ended = service.ended.then(({ stderr }) => Promise.reject(new Error(`it did not start: ${stderr}`)));
  const { url, mqttPort } = JSON.parse(await Promise.race([service.ready, ended]));
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  const api = await signInManager(url);
  await api.put('/channels', { webhooks: [{ name: 'Hook', url: receiver.url, allowLocal: true }] });
  const codes = async () => (await api.get<Health>('/health')).body.problems.map(({ code }) => code);
  const alarms = async () => (await api.get<{ items: AlarmView[] }>(`/alarms?chamberId=${SERVICE_ID}`)).body.items;
  const told = () => receiver.calls.map(({ message }) => message).filter(isOfDisk);
  return { disk, api, node: await connectNode(mqttPort, 'n1'), codes, alarms, told };
}

function isOfDisk(message: Record<string, unknown>): boolean {
  return (message['alarm'] as { rule?: string } | undefined)?.rule === 'disk-nearly-full';
}

it('tells that the disk is full, lives on its ballast, and goes on by itself when there is room', async () => {
  const { disk, api, node, codes, alarms, told } = await openOnSmallDisk();
  await expect.poll(() => disk.has('ballast'), LONG).toBe(true);
  let sent = 0;
  const acknowledged: number[] = [];
  const sendPack = () => {
    const pack = Array.from({ length: PACK }, (_, n) => ({
      ...{ temperature: 21, humidity: 95, time: START / 1000 - 86_400 + sent * PACK + n },
    }));
    const number = sent++;
    return node.send(pack).then(() => acknowledged.push(number));
  };
  await sendPack();
  disk.fill();
  const onBallast = sendPack();
  await expect.poll(() => disk.has('ballast'), LONG).toBe(false);
  // The room of the ballast takes the readings that waited.
  await onBallast;
  await expect.poll(async () => (await alarms()).map(({ rule }) => rule), LONG).toContain('disk-nearly-full');
  await expect.poll(() => told().length, LONG).toBe(1);
  disk.fill();
  const waiting = Promise.all(Array.from({ length: 20 }, sendPack));
  // Freed pages and what the log file holds already may take some more: it is filled until nothing is left.
  const whenFilledUp = () => {
    disk.fill();
    return codes();
  };
  await expect.poll(whenFilledUp, LONG).toContain('store-full');
  expect(acknowledged.length).toBeLessThan(sent);
  await expect.poll(() => told().map(({ kind }) => kind), LONG).toContain('escalated');
  disk.makeRoom();
  await waiting;
  expect(acknowledged).toHaveLength(sent);
  await expect.poll(codes, LONG).not.toContain('store-full');
  await expect.poll(async () => (await api.get<Health>('/health')).body.ready, LONG).toBe(true);
  await expect
    .poll(async () => (await alarms()).filter(({ rule }) => rule === 'disk-nearly-full').length, LONG)
    .toBe(1);
  await expect.poll(() => disk.has('ballast'), LONG).toBe(true);
}, 120_000);
