// Readings that people publish with mosquitto_pub, into the embedded broker and into a mosquitto that the service follows: what is stored is what
// was sent, exactly, whatever is repeated, late, early, halved or retained.
import { describe, expect, it } from 'vitest';
import type { RefusedView } from '../../shared/api/probes.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import { loadGreenhouseSeries, payloadOf } from '../support/greenhouse-series.ts';
import { untilReady } from '../support/health.ts';
import { openMosquitto, publishLines, publishRetained } from '../support/mosquitto.ts';
import { openTestApp, type TestApp } from '../support/open-test-app.ts';
import { createTestClock, type TestClock } from '../support/test-clock.ts';

const topic = 'takewell/v1/bench-4/readings';
const { rows } = loadGreenhouseSeries();
const series = rows.slice(0, 300);
const lines = payloadOf(series, 0).map((row) => JSON.stringify(row));
const lastMs = series.at(-1)?.timeMs ?? 0;

interface Site extends TestApp {
  readonly clock: TestClock;
  /** Where people publish. */
  readonly port: number;
}

async function openEmbedded(): Promise<Site> {
  const clock = createTestClock(lastMs);
  const test = await openTestApp({ clock });
  return { ...test, clock, port: test.app.mqttPort ?? 0 };
}

async function openOutside(): Promise<Site> {
  const clock = createTestClock(lastMs);
  const mosquitto = await openMosquitto({ persistence: false });
  const test = await openTestApp({ clock, environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
  await untilReady(test.api);
  return { ...test, clock, port: mosquitto.port };
}

const probeNumber = async ({ app }: TestApp) => (await app.store.probes.list())[0]?.number ?? 0;

async function readAll(site: TestApp): Promise<Reading[]> {
  const readings: Reading[] = [];
  const all = site.app.store.readings.range(await probeNumber(site), 0, Number.MAX_SAFE_INTEGER);
  for await (const reading of all) readings.push(reading);
  return readings;
}

const refusals = async ({ api }: TestApp) => (await api.get<{ items: RefusedView[] }>('/refused')).body.items;

/** Publishes readings in one go; resolves when the service has taken them all. */
async function publish(site: Site, payloads: readonly object[]): Promise<void> {
  // What cannot be read is put on record in the order of arrival: when the end is there, so is everything before it.
  const end = `the end of ${payloads.length}`;
  await publishLines(site.port, topic, [...payloads.map((one) => JSON.stringify(one)), end]);
  const texts = async () => (await refusals(site)).map(({ payloadStart }) => payloadStart);
  await expect.poll(texts, { timeout: 20_000 }).toContain(end);
}

describe.each([
  ['the embedded broker', openEmbedded],
  ['an outside mosquitto', openOutside],
])('through %s', (_broker, openSite) => {
  it('stores a recorded series number for number', async () => {
    const site = await openSite();
    await publishLines(site.port, topic, lines);
    await expect.poll(() => site.app.store.readings.countAll(), { timeout: 20_000 }).toBe(300);
    const stored = (await readAll(site)).map(({ timeMs, temperature, humidity }) => ({
      timeMs,
      temperature,
      humidity,
    }));
    expect(stored).toEqual(series.map(({ timeMs, sensors }) => ({ timeMs, ...sensors[0] })));
    expect(await refusals(site)).toEqual([]);
  });

  it('changes nothing when the series is sent again', async () => {
    const site = await openSite();
    await publishLines(site.port, topic, lines);
    await expect.poll(() => site.app.store.readings.countAll(), { timeout: 20_000 }).toBe(300);
    const before = await readAll(site);
    site.clock.advance(3 * MINUTE_MS);
    await publish(site, payloadOf(series, 0));
    expect(await readAll(site)).toEqual(before);
  });

  it.each([
    ['just come', 0, false],
    ['two minutes old', 2 * MINUTE_MS, false],
    ['a millisecond older', 2 * MINUTE_MS + 1, true],
    ['a day old', 1440 * MINUTE_MS, true],
  ])('marks what came late, and keeps when it came: %s', async (_why, ageMs, late) => {
    const site = await openSite();
    const nowMs = site.clock.nowMs();
    await publish(site, [{ temperature: 21, time: utcText(nowMs - ageMs) }]);
    const [reading] = await readAll(site);
    expect(reading).toMatchObject({ timeMs: nowMs - ageMs, receivedMs: nowMs, late });
  });

  it.each([
    ['five minutes', 5 * MINUTE_MS, true],
    ['a millisecond more', 5 * MINUTE_MS + 1, false],
  ])('judges a reading by how far it is ahead: %s', async (_why, aheadMs, isAdmitted) => {
    const site = await openSite();
    await publish(site, [{ temperature: 21, time: utcText(site.clock.nowMs() + aheadMs) }]);
    expect(await readAll(site)).toHaveLength(isAdmitted ? 1 : 0);
    const reasons = (await refusals(site)).map(({ reason }) => reason).filter((reason) => reason.includes('ahead'));
    expect(reasons).toHaveLength(isAdmitted ? 0 : 1);
  });

  it('completes a reading whose halves come in two messages, whichever comes first', async () => {
    const site = await openSite();
    const [first, second] = [utcText(lastMs - 60_000), utcText(lastMs - 30_000)];
    await publish(site, [
      { temperature: 21.5, time: first },
      { humidity: 94.5, time: second },
      { humidity: 95.5, time: first },
      { temperature: 22.5, time: second },
      // Whole by now: what comes later has nothing to add.
      { temperature: 30, humidity: 50, time: first },
    ]);
    expect(await readAll(site)).toMatchObject([
      { timeMs: lastMs - 60_000, temperature: 21.5, humidity: 95.5 },
      { timeMs: lastMs - 30_000, temperature: 22.5, humidity: 94.5 },
    ]);
  });
});

describe('a retained reading', () => {
  it('is taken as fresh by the embedded broker: it comes straight from its node', async () => {
    const site = await openEmbedded();
    await publishRetained(site.port, topic, JSON.stringify({ temperature: 21 }));
    expect(await readAll(site)).toMatchObject([{ timeMs: lastMs, temperature: 21 }]);
  });

  it('that an outside broker kept is refused without a time, and admitted with its own', async () => {
    const clock = createTestClock(lastMs);
    const mosquitto = await openMosquitto({ persistence: false });
    await publishRetained(mosquitto.port, 'takewell/v1/undated/readings', JSON.stringify({ temperature: 21 }));
    const dated = JSON.stringify({ temperature: 22, time: utcText(lastMs - 3 * MINUTE_MS) });
    await publishRetained(mosquitto.port, topic, dated);
    const site = await openTestApp({ clock, environment: { TAKEWELL_MQTT_URL: mosquitto.url } });
    await expect
      .poll(() => refusals(site), { timeout: 10_000 })
      .toMatchObject([{ topic: 'takewell/v1/undated/readings', reason: expect.stringContaining('cannot be dated') }]);
    await expect.poll(() => site.app.store.readings.countAll()).toBe(1);
    expect(await readAll(site)).toMatchObject([{ timeMs: lastMs - 3 * MINUTE_MS, temperature: 22, late: true }]);
  });
});
