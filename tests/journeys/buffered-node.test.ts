// A node that was cut off for two hours sends its buffer when it is back, twice because the first acknowledgement is lost: all of it counts for
// the statistics and the record, none of it startles anybody as if it were now, and what is hot now is told.
import { describe, expect, it } from 'vitest';
import type { RefusedView } from '../../shared/api/probes.ts';
import type { BatchRecord } from '../../shared/api/record.ts';
import type { Reading } from '../../shared/readings/reading.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import { connectNode, type TestNode } from '../support/connect-node.ts';
import { type HealingSite, openHealingSite } from '../support/open-healing-site.ts';

const CUT_MS = Date.parse('2026-03-02T08:00:00Z');
const BACK_MS = CUT_MS + 2 * HOUR_MS;
const COUNT = (BACK_MS - CUT_MS) / SECOND_MS;

interface BufferedReading {
  readonly time: number;
  readonly temperature: number;
  readonly humidity: number;
}

/** One reading a second while cut off. `temperatureAt` takes the minute since the cut. */
function makeBuffer(temperatureAt: (minute: number) => number): BufferedReading[] {
  return Array.from({ length: COUNT }, (_, n) => ({
    time: CUT_MS / 1000 + n + 1,
    temperature: Math.round(temperatureAt((n + 1) / 60) * 100) / 100,
    humidity: 95,
  }));
}

/** 24 °C, but for an hour at 31 °C that was over half an hour before the node came back; a degree a minute up and down. */
const hotHour = makeBuffer((minute) => 24 + Math.max(0, Math.min(7, minute - 30, 100 - minute)));
/** 24 °C, and hotter and hotter for the last seven minutes. */
const hotNow = makeBuffer((minute) => 24 + Math.max(0, minute - 113));

async function openCutSite(): Promise<{ site: HealingSite; node: TestNode }> {
  const site = await openHealingSite({ nowMs: CUT_MS });
  const node = await connectNode(site.app.mqttPort, 'n1');
  await node.send({ time: CUT_MS / 1000, temperature: 24, humidity: 95 });
  await site.app.tick();
  return { site, node };
}

/** Lets time pass by the watch's own rounds. */
async function pass(site: HealingSite, ms: number): Promise<void> {
  for (const end = site.clock.nowMs() + ms; site.clock.nowMs() < end; ) {
    site.clock.advance(10 * SECOND_MS);
    await site.app.tick();
  }
}

async function readAll(site: HealingSite): Promise<Reading[]> {
  const readings: Reading[] = [];
  for await (const one of site.app.store.readings.range(site.probe, CUT_MS + 1, BACK_MS)) readings.push(one);
  return readings;
}

const recordOf = async (site: HealingSite) =>
  (await site.api.get<BatchRecord>(`/batches/${site.batchId}/record.json`)).body;

describe('a buffer of two hours, sent twice', () => {
  it('is stored once, each reading with its values, its first arrival, and marked late from two minutes on', async () => {
    const { site, node } = await openCutSite();
    site.clock.set(BACK_MS);
    await node.send(hotHour);
    const first = await readAll(site);
    site.clock.advance(5 * MINUTE_MS);
    await node.send(hotHour);
    expect(await readAll(site)).toEqual(first);
    expect(first.map(({ temperature, humidity }) => ({ temperature, humidity }))).toEqual(
      hotHour.map(({ temperature, humidity }) => ({ temperature, humidity })),
    );
    expect(first.filter(({ receivedMs }) => receivedMs !== BACK_MS)).toEqual([]);
    expect(first.filter(({ timeMs, late }) => late !== BACK_MS - timeMs > 2 * MINUTE_MS)).toEqual([]);
    expect(first.filter(({ late }) => late)).toHaveLength(COUNT - 121);
  });

  it('gives the record and the charts of a node that was never cut off', async () => {
    const { site, node } = await openCutSite();
    site.clock.set(BACK_MS);
    await node.send(hotHour);
    await node.send(hotHour);
    const live = await openCutSite();
    for (let from = 0; from < COUNT; from += 60) {
      live.site.clock.advance(MINUTE_MS);
      await live.node.send(hotHour.slice(from, from + 60));
    }
    const [buffered, steady] = [await recordOf(site), await recordOf(live.site)];
    expect(buffered.days).toEqual(steady.days);
    expect(buffered.whole).toEqual(steady.whole);
    expect(buffered.excursions).toEqual(steady.excursions);
    expect(buffered.gaps).toEqual(steady.gaps);
    expect(buffered.quality).toEqual(steady.quality);
    expect(buffered.whole?.temperature.max).toBe(31);
    expect(buffered.probes.map(({ lateReadings }) => lateReadings)).toEqual([COUNT - 121]);
    const grid = { fromMs: CUT_MS, bucketMs: 5 * MINUTE_MS, count: 24 };
    const buckets = await site.app.store.readings.buckets(site.probe, grid);
    expect(buckets).toEqual(await live.site.app.store.readings.buckets(live.site.probe, grid));
    expect(buckets).toHaveLength(24);
  });

  it('tells nobody of the heat that is over', async () => {
    const { site, node } = await openCutSite();
    await pass(site, 2 * HOUR_MS);
    // Meanwhile nobody measured the tent: that was told, and rightly.
    const before = await site.told();
    expect(before[0]).toBe('raised silent-chamber');
    await node.send(hotHour);
    await node.send(hotHour);
    await pass(site, 5 * MINUTE_MS);
    expect((await site.told()).slice(before.length)).toEqual(['returned silent-chamber']);
    const alarms = await site.api.get<{ items: { rule: string }[] }>('/alarms');
    // Only a program is told at this site: that nobody has a phone is an alarm of its own.
    expect(alarms.body.items.map(({ rule }) => rule).sort()).toEqual([
      'nobody-reachable',
      'silent-chamber',
      'silent-probe',
    ]);
    expect((await recordOf(site)).excursions).toMatchObject([{ quantity: 'temperature', side: 'high', peak: 31 }]);
  });

  it('tells once of the heat that is now', async () => {
    const { site, node } = await openCutSite();
    site.clock.set(BACK_MS);
    await node.send(hotNow);
    await node.send(hotNow);
    expect(await site.told()).toEqual([]);
    await pass(site, MINUTE_MS);
    expect(await site.told()).toEqual(['raised heat']);
    await node.send(hotNow);
    await pass(site, MINUTE_MS);
    expect(await site.told()).toEqual(['raised heat']);
  });
});

describe('the length of a buffer', () => {
  const send = async (length: number) => {
    const site = await openHealingSite({ nowMs: CUT_MS });
    const node = await connectNode(site.app.mqttPort, 'n1');
    const startSeconds = CUT_MS / 1000 - length;
    await node.send(Array.from({ length }, (_, n) => ({ temperature: 24, humidity: 95, time: startSeconds + n })));
    const { items } = (await site.api.get<{ items: RefusedView[] }>('/refused')).body;
    return { stored: await site.app.store.readings.countAll(), refused: items.map(({ reason }) => reason) };
  };

  it('may be 10,000 readings', async () => {
    expect(await send(10_000)).toEqual({ stored: 10_000, refused: [] });
  });

  it('may not be one more', async () => {
    const { stored, refused } = await send(10_001);
    expect(stored).toBe(0);
    expect(refused).toEqual(['The list has 10001 readings; split it into lists of at most 10,000.']);
  });
});
