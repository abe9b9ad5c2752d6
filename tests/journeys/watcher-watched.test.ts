// The watcher watched: what is told when the service was away, when the machine's clock is set, and when nothing can be stored.
import { expect, it, onTestFinished } from 'vitest';
import { SERVICE_ID } from '../../shared/alarms/alarm.ts';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { makeFullStore } from '../support/fill-disk.ts';
import { openMosquitto } from '../support/mosquitto.ts';
import { openBatch, openTent, type Tent } from '../support/open-tent.ts';
import { openTestApp } from '../support/open-test-app.ts';
import { createTestClock } from '../support/test-clock.ts';
import { openWebhookReceiver } from '../support/webhook-receiver.ts';

const ofService = async ({ api }: Pick<Tent, 'api'>) =>
  (await api.get<{ items: AlarmView[] }>(`/alarms?chamberId=${SERVICE_ID}`)).body.items;

/** Sends readings that were measured before, a minute apart, as a node that was cut off does. */
async function sendBuffer({ app, clock }: Tent, fromMs: number, temperatures: readonly number[]): Promise<void> {
  const readings = temperatures.map((temperature, minute) => ({
    ...{ temperature, humidity: 95, probe: 'a', time: utcText(fromMs + minute * MINUTE_MS) },
  }));
  const payload = Buffer.from(JSON.stringify(readings));
  await app.intake.push({ topic: 'takewell/v1/n1/readings', payload, arrivalMs: clock.nowMs(), retained: false });
}

async function addWebhook({ api }: Pick<Tent, 'api'>) {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  await api.put('/channels', { webhooks: [{ name: 'Hook', url: receiver.url, allowLocal: true, headers: [] }] });
  return receiver;
}

it('tells a stop of 47 minutes in one message with what the nodes measured meanwhile, also when killed while it waits', async () => {
  const tent = await openTent();
  await openBatch(tent);
  const receiver = await addWebhook(tent);
  await tent.stay(26, MINUTE_MS);
  const stoppedMs = tent.clock.nowMs();
  const back = await (await tent.reopen(47 * MINUTE_MS)).reopen(5 * SECOND_MS);
  // Eight minutes at 26 °C, then above 28 °C for 31, then well again.
  const course = Array.from({ length: 47 }, (_, minute) => (minute >= 8 && minute < 39 ? 28.6 : 26));
  await sendBuffer(back, stoppedMs + MINUTE_MS, course.slice(1));
  await back.measure(26);
  await back.app.tick();
  // The webhook is a program: that no person can be reached is so all the while.
  expect((await ofService(back)).map(({ rule }) => rule)).toEqual(['nobody-reachable']);
  back.clock.advance(25 * SECOND_MS);
  await back.measure(26);
  await back.app.tick();
  await back.app.tick();
  await back.app.deliver();
  expect(receiver.calls.map(({ message }) => message['kind'])).toEqual(['outage']);
  const alarm = (await ofService(back)).find(({ rule }) => rule === 'restarted');
  expect(alarm).toMatchObject({ chamberId: null, chamberName: 'Takewell' });
  expect(alarm?.sentence).toMatch(/^↻ Back after 47 min; Tent 1 was above 28 °C for 3[01] of them$/);
});

it('hears a probe on when the clock is set back, and tells of it once', async () => {
  const tent = await openTent();
  await openBatch(tent);
  await tent.stay(26, MINUTE_MS);
  tent.clock.jump(-2 * HOUR_MS);
  await tent.app.tick();
  // What was measured by the wrong clock is not the air of now.
  expect((await tent.chamber()).climate).toMatchObject({ temperature: null });
  await tent.measure(27);
  expect((await tent.chamber()).climate).toMatchObject({ temperature: 27 });
  await tent.app.tick();
  expect((await ofService(tent)).map(({ sentence }) => sentence)).toEqual([
    '◷ The clock of the machine was set back by 2 h 0 min',
  ]);
});

it('tells a clock that was set back once, also when the service starts again before what is dated ahead is past', async () => {
  const tent = await openTent();
  await openBatch(tent);
  await tent.stay(26, MINUTE_MS);
  tent.clock.jump(-2 * HOUR_MS);
  await tent.app.tick();
  await tent.measure(28.5);
  const again = await tent.reopen(10 * SECOND_MS);
  await again.app.tick();
  expect((await ofService(again)).map(({ sentence }) => sentence)).toEqual([
    '◷ The clock of the machine was set back by 2 h 0 min',
  ]);
  expect((await again.chamber()).climate).toMatchObject({ temperature: 28.5 });
  // A delay that runs goes on; it is not moved a second time.
  await again.measure(28.5);
  await again.app.tick();
  expect(await again.alarms()).toEqual([]);
  await again.stay(28.5, 50 * SECOND_MS);
  expect((await again.alarms()).map(({ rule, since }) => [rule, since])).toEqual([['heat', '2026-03-01T10:01:00Z']]);
});

it('tells a clock that was set back while the service was away once, however often it starts again', async () => {
  const tent = await openTent();
  await openBatch(tent);
  await tent.measure(26);
  let back = await tent.reopen(-2 * HOUR_MS);
  for (const restart of [1, 2]) {
    await back.app.tick();
    const jumps = (await ofService(back)).filter(({ rule }) => rule === 'clock-jumped');
    expect(jumps, `before restart ${restart}`).toHaveLength(1);
    back = await back.reopen(10 * SECOND_MS);
  }
  await back.app.tick();
  expect((await ofService(back)).map(({ rule }) => rule)).toEqual(['clock-jumped']);
});

it('does not count the hours by which the clock is set forward', async () => {
  const tent = await openTent();
  await openBatch(tent);
  await tent.measure(28.5);
  await tent.app.tick();
  tent.clock.jump(2 * HOUR_MS);
  await tent.app.tick();
  await tent.measure(28.5);
  await tent.app.tick();
  expect((await tent.alarms()).map(({ rule }) => rule)).toEqual([]);
  await tent.stay(28.5, MINUTE_MS);
  expect((await tent.alarms()).map(({ rule }) => rule)).toEqual(['heat']);
});

it('tells from memory that nothing can be stored, once, and stores it when there is room', async () => {
  const full = await makeFullStore({ sparePages: 40 });
  const clock = createTestClock(Date.UTC(2026, 2, 1, 12));
  const test = await openTestApp({ folder: full.folder, store: { maxPages: full.maxPages }, clock });
  const receiver = await addWebhook(test);
  const payload = Buffer.from(
    JSON.stringify(
      Array.from({ length: 9_000 }, (_, i) => ({ temperature: 21, humidity: 95, time: 1_750_000_000 + i })),
    ),
  );
  const message = { topic: 'takewell/v1/n1/readings', payload, arrivalMs: clock.nowMs(), retained: false };
  const stored = test.app.intake.push(message);
  await expect.poll(() => test.app.intake.trouble()?.code, { timeout: 20_000 }).toBe('store-full');
  const rounds = async (count: number) => {
    for (let round = 0; round < count; round += 1) {
      // The chambers cannot be judged while nothing can be stored; the service is.
      await test.app.tick().catch((error: unknown) => expect(error).toMatchObject({ code: 'store-full' }));
      clock.advance(5 * SECOND_MS);
    }
  };
  await rounds(4);
  await expect.poll(() => receiver.calls.length).toBe(1);
  expect(receiver.calls[0]?.message).toMatchObject({ kind: 'raised' });
  full.makeRoom();
  await stored;
  await rounds(2);
  await test.app.deliver();
  expect(await ofService(test)).toMatchObject([{ rule: 'disk-nearly-full', priority: 'critical' }]);
  expect(receiver.calls.filter(({ message: told }) => told['kind'] === 'raised')).toHaveLength(1);
});

it('tells of a broker that is lost which tents are blind, and nothing of their silence', async () => {
  const mosquitto = await openMosquitto({ persistence: false });
  const tent = await openTent({ environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await openBatch(tent);
  await tent.measure(26);
  await mosquitto.stop('SIGKILL');
  await expect.poll(async () => (await tent.api.get('/health')).status, { timeout: 20_000 }).toBe(503);
  for (let minute = 0; minute < 20; minute += 1) {
    await tent.app.tick();
    tent.clock.advance(MINUTE_MS);
  }
  expect(await tent.alarms()).toEqual([]);
  const lost = (await ofService(tent)).find(({ rule }) => rule === 'broker-lost');
  expect(lost).toMatchObject({ priority: 'critical', state: 'unacknowledged' });
  expect(lost?.sentence).toContain('Not measured: Tent 1 (T-1)');
});
