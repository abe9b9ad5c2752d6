// A tent overheats at night and nobody answers, while the service is killed again and again: as it decides, as it tells, and between telling and
// noting that it has told. Everybody is told who should be, in the order of the rota; nobody of it never, and nothing more than once more.
import { join } from 'node:path';
import Database from 'better-sqlite3';
import mqtt from 'mqtt';
import { expect, it, onTestFailed, onTestFinished } from 'vitest';
import { createNoise } from '../../server/demo/seeded-noise.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../shared/units.ts';
import type { ApiClient } from '../support/api-client.ts';
import { createFastClock } from '../support/fast-clock.ts';
import { makeTestFolder, signInManager, TEST_SETUP_CODE } from '../support/open-test-app.ts';
import { type ServiceRun, startService } from '../support/service-run.ts';
import { openWebhookReceiver, type WebhookReceiver } from '../support/webhook-receiver.ts';

const KILLS = 12;
/** A minute of the service's clock passes in a second. */
const SPEED = 60;
const LONG = { timeout: 60_000, interval: 50 };
const NIGHT_MS = Date.UTC(2026, 2, 2, 23);

interface Told {
  readonly id: string;
  readonly kind: string;
  readonly personId: string;
  readonly decidedMs: number;
  readonly state: string;
}

it('tells everybody in turn, loses no notice and repeats none more than once, however often it is killed', {
  timeout: 200_000,
}, async () => {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  const night = await openNight(receiver);
  const people = await night.setUp();
  for (let kill = 0; kill < KILLS; kill += 1) await night.liveAndDie();
  const port = await night.live();
  // Everybody knows, and the siren sounds.
  await expect.poll(() => night.sinceHotMs(), LONG).toBeGreaterThan(22 * MINUTE_MS);
  await expect.poll(() => readRetained(port, 'takewell/v1/siren'), LONG).toBe('on');
  await night.stop();

  const db = new Database(join(night.folder, 'takewell.sqlite'), { readonly: true });
  onTestFinished(() => void db.close());
  const told = db
    .prepare<[], Told>(
      `SELECT id, kind, person_id personId, decided_ms decidedMs, state FROM notices
       WHERE chamber_id <> 'takewell' AND json_extract((SELECT document FROM alarms a WHERE a.id = alarm_id), '$.rule') = 'heat'
       AND kind IN ('raised', 'escalated', 'passed-on', 'repeated') ORDER BY decided_ms, id`,
    )
    .all();
  expectInTurn(told, people);
  expectSent(told, receiver, night.callsAtDeath);
});

/** Who is on duty, then the next of the order, then everybody; each is asked to come once, and again only after ten minutes. */
function expectInTurn(told: readonly Told[], [onDuty, next, last]: readonly string[]): void {
  // It may have got worse before anybody else was asked: the last asking counts.
  const begun = told.findLastIndex(({ kind }) => kind === 'raised' || kind === 'escalated');
  const asked = told.slice(begun).filter(({ kind }) => kind !== 'repeated');
  const begunMs = asked[0]?.decidedMs ?? 0;
  expect(asked.map(({ personId }) => personId)).toEqual([onDuty, next, last]);
  expect(asked.slice(1).map(({ kind }) => kind)).toEqual(['passed-on', 'passed-on']);
  for (const [index, minutes] of [0, 5, 15].entries())
    expect((asked[index]?.decidedMs ?? 0) - begunMs).toBeGreaterThanOrEqual(minutes * MINUTE_MS);
  const repeats = told.slice(begun).filter(({ kind }) => kind === 'repeated');
  expect(new Set(repeats.map(({ id }) => id)).size).toBe(repeats.length);
  for (const { personId, decidedMs } of repeats) {
    const first = asked.find((one) => one.personId === personId)?.decidedMs ?? Infinity;
    expect(decidedMs - first).toBeGreaterThanOrEqual(10 * MINUTE_MS);
  }
}

/** Every notice was told, and told again only by a life that could not know that the one before had told it. */
function expectSent(told: readonly Told[], receiver: WebhookReceiver, callsAtDeath: readonly number[]): void {
  const lifeOf = (call: number) => callsAtDeath.findIndex((count) => call < count);
  for (const { id, state } of told) {
    const calls = receiver.calls.flatMap(({ noticeId }, call) => (noticeId === id ? [call] : []));
    expect(state, id).toBe('sent');
    expect(calls.length, id).toBeGreaterThanOrEqual(1);
    expect(new Set(calls.map(lifeOf)).size, id).toBe(calls.length);
  }
}

async function readRetained(port: number, topic: string): Promise<string> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`);
  const heard = new Promise<string>((resolve) => client.on('message', (_, payload) => resolve(payload.toString())));
  await client.subscribeAsync(topic, { qos: 1 });
  const text = await heard;
  await client.endAsync();
  return text;
}

async function openNight(receiver: WebhookReceiver) {
  const number = Date.now() % 1_000_000;
  onTestFailed(() => void process.stdout.write(`the random instants of this night began with ${number}\n`));
  const chance = createNoise(number).uniform;
  const folder = await makeTestFolder();
  const numbers = { startMs: NIGHT_MS, realMs: Date.now(), speed: SPEED };
  const clock = createFastClock(numbers);
  const callsAtDeath: number[] = [];
  let running: ServiceRun | null = null;
  let node: mqtt.MqttClient | null = null;
  let hotMs = Number.NaN;
  let sent = 0;
  // Not before its probe stands in the tent.
  let isHeating = false;
  const environment = {
    TAKEWELL_DATA_DIR: folder,
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
    TAKEWELL_SETUP_CODE: TEST_SETUP_CODE,
    TAKEWELL_LOG_LEVEL: 'error',
  };
  const start = async () => {
    const args = [numbers.startMs, numbers.realMs, numbers.speed].map(String);
    running = startService('tests/support/service-process.ts', environment, args);
    const ready = JSON.parse(await running.ready) as { url: string; mqttPort: number };
    node = await mqtt.connectAsync(`mqtt://127.0.0.1:${ready.mqttPort}`);
    return ready;
  };
  const die = async (signal: NodeJS.Signals) => {
    node?.end(true);
    node = null;
    running?.kill(signal);
    await running?.ended;
    // What it had sent before it died is read now.
    for (let turn = 0; turn < 10; turn += 1) await new Promise((resolve) => setImmediate(resolve));
    callsAtDeath.push(receiver.calls.length);
  };
  const heating = setInterval(() => {
    const time = utcText(clock.nowMs());
    if (!isHeating) return;
    sent += 1;
    const temperature = 31 + (sent % 10) / 100;
    node?.publish('takewell/v1/n1/readings', JSON.stringify({ time, temperature, humidity: 95 }), { qos: 1 });
    if (Number.isNaN(hotMs) && node !== null) hotMs = clock.nowMs();
  }, 100);
  onTestFinished(async () => {
    clearInterval(heating);
    await die('SIGKILL');
  });
  return {
    folder,
    callsAtDeath,
    sinceHotMs: () => clock.nowMs() - hotMs,
    async setUp() {
      const { url } = await start();
      const people = await setUpSite(await signInManager(url), receiver.url, clock.nowMs());
      isHeating = true;
      await die('SIGKILL');
      return people;
    },
    live: async () => (await start()).mqttPort,
    async liveAndDie() {
      await start();
      const later = new Promise<void>((resolve) => setTimeout(resolve, chance() * 1_000));
      // One in three dies with the next notice on its lips: told, and not yet written down as told.
      const told = receiver.whenCalled(receiver.calls.length + 1);
      await (chance() > 0.67 ? Promise.race([told, later]) : later);
      await die('SIGKILL');
    },
    async stop() {
      clearInterval(heating);
      await die('SIGTERM');
    },
  };
}

/** A tent with a batch; three people whom a gateway of text messages reaches, the first of them on duty. Their ids, as they are to be asked. */
async function setUpSite(api: ApiClient, gateway: string, nowMs: number): Promise<string[]> {
  const chamber = await api.post<{ id: string }>('/chambers', { name: 'Tent 1' });
  const chamberId = chamber.body.id;
  await api.post('/probes', { nodeId: 'n1', address: '', chamberId, place: 'canopy' });
  const closedAt = utcText(nowMs - 30 * HOUR_MS);
  const batch = { chamberId, profileId: 'tomato-common-practice', code: 'B-1', plants: 100, closedAt };
  expect((await api.post('/batches', batch)).status).toBe(201);
  const hook = { name: 'Gateway', url: gateway, allowLocal: true, audience: 'each-person' };
  expect((await api.put('/channels', { webhooks: [hook] })).status).toBe(200);
  const people: string[] = [];
  for (const name of ['On duty', 'Next', 'Last']) {
    const { body } = await api.post<{ id: string }>('/people', { name, role: 'crew', password: 'a short sentence' });
    await api.patch(`/people/${body.id}`, { phoneNumber: `+3161234567${people.length}` });
    people.push(body.id);
  }
  const spans = [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ personId: people[0], weekday, from: '00:00', to: '00:00' }));
  const minutes = { nextAfterMinutes: 5, everyoneAfterMinutes: 15, sirenAfterMinutes: 20, repeatMinutes: 10 };
  expect((await api.put('/duty', { order: people, spans, ...minutes })).status).toBe(200);
  return people;
}
