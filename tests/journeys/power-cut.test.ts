// The service is killed at fifty random instants, at work and while it starts, as a node publishes, a tent overheats again and again, and the
// crew acknowledges. At the end nothing acknowledged is missing, and no alarm is lost or told twice as new.
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it, onTestFailed, onTestFinished } from 'vitest';
import { createNoise } from '../../server/demo/seeded-noise.ts';
import { HOUR_MS, utcText } from '../../shared/units.ts';
import { type ApiClient, createApiClient } from '../support/api-client.ts';
import { createBufferingNode } from '../support/buffering-node.ts';
import { createFastClock } from '../support/fast-clock.ts';
import { makeTestFolder, signInManager, TEST_SETUP_CODE } from '../support/open-test-app.ts';
import { type ServiceRun, startService } from '../support/service-run.ts';
import { openWebhookReceiver, type WebhookReceiver } from '../support/webhook-receiver.ts';

const KILLS = 50;
/** A minute of the service's clock passes in a second. */
const SPEED = 60;
const LONGEST_LIFE_MS = 500;
const EVERY_MS = 15;
const LONG = { timeout: 60_000, interval: 20 };
const [COOL, HOT] = [26, 31];

interface SentReading {
  readonly time: string;
  readonly temperature: number;
  readonly humidity: number;
}

it('loses no acknowledged reading and no alarm, and tells none twice as new', { timeout: 300_000 }, async () => {
  const site = await openKilledSite();
  const crew = workAsCrew(site);
  for (let kill = 0; kill < KILLS; kill += 1) await site.liveAndDie();
  await site.live();
  site.stopHeating();
  const occurrences = await crew;
  await expect.poll(() => site.node.waiting(), LONG).toBe(0);
  await site.stop();
  const db = new Database(join(site.folder, 'takewell.sqlite'), { readonly: true });
  onTestFinished(() => void db.close());
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  expectReadings(db, site);
  expectAlarms(db, occurrences);
  expectNotices(db, site);
});

function expectReadings(db: Database.Database, { sent, node }: KilledSite): void {
  expect(node.acknowledged).toHaveLength(sent.length);
  const rows = db.prepare<[], { t: number; temperature: number; humidity: number }>('SELECT * FROM readings').all();
  const stored = new Map(rows.map(({ t, temperature, humidity }) => [t, `${temperature} ${humidity}`]));
  const scaled = (value: number) => Math.round(value * 10_000);
  const wrong = sent.filter(
    (one) => stored.get(Date.parse(one.time)) !== `${scaled(one.temperature)} ${scaled(one.humidity)}`,
  );
  expect(wrong).toEqual([]);
  expect(rows).toHaveLength(sent.length);
  expect(db.prepare('SELECT sum(readings) n FROM minutes').get()).toEqual({ n: sent.length });
}

function expectAlarms(db: Database.Database, occurrences: readonly string[]): void {
  expect(occurrences.length).toBeGreaterThanOrEqual(5);
  const heat = db.prepare(`SELECT id FROM alarms WHERE json_extract(document, '$.rule') = 'heat' ORDER BY occurred_ms`);
  expect(heat.pluck().all()).toEqual(occurrences);
  const events = db.prepare<[], { alarm: string; change: string; from: string; to: string }>(
    `SELECT alarm_id alarm, change, from_state "from", to_state "to" FROM alarm_events ORDER BY id`,
  );
  const last = new Map<string, string>();
  for (const { alarm, change, from, to } of events.all()) {
    // Each step begins where the one before it ended: none is missing and none is done twice.
    expect({ alarm, change, from }).toEqual({ alarm, change, from: last.get(alarm) ?? 'normal' });
    expect(change === 'occurred', `${alarm} ${change}`).toBe(!last.has(alarm));
    last.set(alarm, to);
  }
  for (const id of occurrences) expect(last.get(id), id).toBe('normal');
}

function expectNotices(db: Database.Database, { receiver, callsAtDeath }: KilledSite): void {
  const told = db.prepare<[], { id: string; alarm: string; kind: string; state: string }>(
    'SELECT id, alarm_id alarm, kind, state FROM notices',
  );
  const raised = new Map<string, number>();
  for (const { alarm, kind } of told.all()) if (kind === 'raised') raised.set(alarm, (raised.get(alarm) ?? 0) + 1);
  expect([...raised.values()].filter((count) => count !== 1)).toEqual([]);
  const lifeOf = (call: number) => callsAtDeath.findIndex((count) => call < count);
  for (const { id, state } of told.all()) {
    const calls = receiver.calls.flatMap(({ noticeId }, call) => (noticeId === id ? [call] : []));
    expect(state, id).not.toBe('waiting');
    if (state === 'sent') expect(calls.length, id).toBeGreaterThanOrEqual(1);
    // Told again only by a life that could not know that the one before had told it.
    expect(new Set(calls.map(lifeOf)).size, id).toBe(calls.length);
  }
  expect(receiver.calls.filter(({ noticeId }) => !told.all().some(({ id }) => id === noticeId))).toEqual([]);
}

/** Heats the tent until somebody is told, cools it until that is told, acknowledges; again until the heating is stopped. The alarms in order. */
async function workAsCrew(site: KilledSite): Promise<string[]> {
  const occurrences: string[] = [];
  const told = (kind: string) =>
    site.receiver.calls
      .filter(({ message }) => message['kind'] === kind)
      .map(({ message }) => (message['alarm'] as { id: string; rule: string }) ?? { id: '', rule: '' })
      .filter(({ rule }) => rule === 'heat')
      .map(({ id }) => id);
  while (site.isHeating()) {
    site.setTemperature(HOT);
    const raised = () => told('raised').find((id) => !occurrences.includes(id));
    await expect.poll(raised, LONG).toBeDefined();
    const id = raised() ?? '';
    occurrences.push(id);
    site.setTemperature(COOL);
    await expect.poll(() => told('returned'), LONG).toContain(id);
    await expect.poll(() => acknowledge(site.api(), id), LONG).toBe('normal');
  }
  return occurrences;
}

/** Acknowledges as far as the service lives to hear it; the state that the alarm has now, null = nobody says. */
async function acknowledge(api: ApiClient | null, id: string): Promise<string | null> {
  try {
    await api?.post(`/alarms/${id}/acknowledge`);
    const answer = await api?.get<{ items: { id: string; state: string }[] }>('/alarms?limit=500');
    return answer?.body.items.find((alarm) => alarm.id === id)?.state ?? null;
  } catch {
    return null;
  }
}

interface KilledSite {
  readonly folder: string;
  readonly receiver: WebhookReceiver;
  readonly node: ReturnType<typeof createBufferingNode<SentReading>>;
  readonly sent: readonly SentReading[];
  /** How many webhook calls had come when each life was over. */
  readonly callsAtDeath: readonly number[];
  /** Signed in; null while the service is down. */
  api(): ApiClient | null;
  setTemperature(temperature: number): void;
  stopHeating(): void;
  isHeating(): boolean;
  /** One life of the service with a random end. */
  liveAndDie(): Promise<void>;
  live(): Promise<void>;
  /** Ends the node's sending and then the service, well. */
  stop(): Promise<void>;
}

async function openKilledSite(): Promise<KilledSite> {
  const number = Date.now() % 1_000_000;
  onTestFailed(() => void process.stdout.write(`power cut: the random instants of this run began with ${number}\n`));
  const chance = createNoise(number).uniform;
  const folder = await makeTestFolder();
  const receiver = await openWebhookReceiver();
  const numbers = { startMs: Date.UTC(2026, 2, 2, 7), realMs: Date.now(), speed: SPEED };
  const clock = createFastClock(numbers);
  const node = createBufferingNode<SentReading>('n1');
  const sent: SentReading[] = [];
  const callsAtDeath: number[] = [];
  let isHeating = true;
  let wanted = COOL;
  let temperature = COOL;
  let cookie = '';
  let api: ApiClient | null = null;
  let running: ServiceRun | null = null;

  const environment = {
    TAKEWELL_DATA_DIR: folder,
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
    TAKEWELL_SETUP_CODE: TEST_SETUP_CODE,
    TAKEWELL_LOG_LEVEL: 'error',
  };
  const start = () => {
    const args = [numbers.startMs, numbers.realMs, numbers.speed].map(String);
    running = startService('tests/support/service-process.ts', environment, args);
    return running;
  };
  const live = async () => {
    const { url, mqttPort } = JSON.parse(await start().ready) as { url: string; mqttPort: number };
    if (cookie === '') cookie = await setUp(url, receiver.url);
    await node.connect(mqttPort);
    api = createApiClient(url, { cookie });
  };
  const die = async (signal: NodeJS.Signals) => {
    api = null;
    running?.kill(signal);
    const ended = await running?.ended;
    // What it had sent before it died is read now.
    for (let turn = 0; turn < 10; turn += 1) await new Promise((resolve) => setImmediate(resolve));
    callsAtDeath.push(receiver.calls.length);
    return ended;
  };

  await live();
  const writing = setInterval(() => {
    const time = utcText(clock.nowMs());
    if (time === sent.at(-1)?.time) return;
    // Not faster than 2.5 °C a reading: a jump would be held for a faulty sensor.
    temperature += Math.max(-2.5, Math.min(2.5, wanted - temperature));
    const reading = { time, temperature: temperature + (sent.length % 10) / 100, humidity: 95 };
    sent.push(reading);
    node.add(reading);
  }, EVERY_MS);
  onTestFinished(async () => {
    clearInterval(writing);
    await node.close();
    await receiver.close();
  });
  await die('SIGKILL');

  return {
    ...{ folder, receiver, node, sent, callsAtDeath, live },
    api: () => api,
    setTemperature(next) {
      wanted = next;
    },
    stopHeating() {
      isHeating = false;
    },
    isHeating: () => isHeating,
    async liveAndDie() {
      const kind = chance();
      // One in five does not get as far as being ready.
      if (kind < 0.2) start();
      else await live();
      const later = new Promise<void>((resolve) => setTimeout(resolve, chance() * LONGEST_LIFE_MS));
      // Another one in five dies with the next notice on its lips: told, and not yet written down as told.
      const told = receiver.whenCalled(receiver.calls.length + 1);
      await (kind > 0.8 ? Promise.race([told, later]) : later);
      await die('SIGKILL');
    },
    async stop() {
      clearInterval(writing);
      await expect.poll(() => node.waiting(), LONG).toBe(0);
      expect(await die('SIGTERM')).toMatchObject({ code: 0 });
    },
  };

  /** The tent, its probe, a batch on its second healing day, and where to call. */
  async function setUp(url: string, webhook: string): Promise<string> {
    const manager = await signInManager(url);
    const chamber = await manager.post<{ id: string }>('/chambers', { name: 'Tent 1' });
    const chamberId = chamber.body.id;
    const probe = await manager.post<{ id: string }>('/probes', {
      nodeId: 'n1',
      address: '',
      chamberId,
      place: 'canopy',
    });
    await manager.patch(`/probes/${probe.body.id}`, { silenceMinutes: 240 });
    const closedAt = utcText(clock.nowMs() - 30 * HOUR_MS);
    const batch = { chamberId, profileId: 'tomato-common-practice', code: 'B-1', plants: 100, closedAt };
    expect((await manager.post('/batches', batch)).status).toBe(201);
    expect(
      (await manager.put('/channels', { webhooks: [{ name: 'Hook', url: webhook, allowLocal: true }] })).status,
    ).toBe(200);
    return manager.cookie();
  }
}
