// Six weeks of greenhouse air through the whole spine, as fast as it goes: published over MQTT in packs, stored, judged, and the record's mean
// of each healing day equal to one that is worked out here on its own.
import { expect, it } from 'vitest';
import type { RefusedView } from '../../shared/api/probes.ts';
import type { BatchRecord } from '../../shared/api/record.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { connectNode } from '../support/connect-node.ts';
import { type GreenhouseRow, loadGreenhouseSeries, payloadOf } from '../support/greenhouse-series.ts';
import { type HealingSite, openHealingSite } from '../support/open-healing-site.ts';

interface RecordReading {
  readonly time: string;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly temperatureFlag: number;
  readonly humidityFlag: number;
}
type RecordDocument = BatchRecord & { readonly readings: readonly RecordReading[] };

/** A pack every two hours, as from a node that saves its battery. */
const PACK = 24;
const SILENCE_MS = 10 * MINUTE_MS;
const { rows } = loadGreenhouseSeries();
const [firstMs, lastMs] = [rows[0]?.timeMs ?? 0, rows.at(-1)?.timeMs ?? 0];

it.each([
  ['the first sensor', 0],
  ['the second sensor', 1],
] as const)('keeps every measured value of %s and its figures of each healing day', async (_name, sensor) => {
  const site = await openHealingSite({ nowMs: firstMs, closedMs: firstMs });
  await sendAll(site, sensor);
  const measured = rows.filter(({ sensors }) => sensors[sensor].temperature !== null);
  const document = (await site.api.get<RecordDocument>(`/batches/${site.batchId}/record.json`)).body;
  const kept = document.readings.map(({ time, temperature, humidity }) => ({ time, temperature, humidity }));
  expect(kept).toEqual(measured.map(({ time, sensors }) => ({ time, ...sensors[sensor] })));
  await expectRefusedBlanks(site, rows.length - measured.length);
  expectDays(document);
});

async function sendAll(site: HealingSite, sensor: 0 | 1): Promise<void> {
  const node = await connectNode(site.app.mqttPort, 'n1');
  for (let from = 0; from < rows.length; from += PACK) {
    const pack = rows.slice(from, from + PACK);
    site.clock.set(pack.at(-1)?.timeMs ?? lastMs);
    await node.send(payloadOf(pack, sensor));
  }
}

/** A row without a value says nothing: each is refused with its place, and nothing else is. */
async function expectRefusedBlanks({ api }: HealingSite, blanks: number): Promise<void> {
  const { items } = (await api.get<{ items: RefusedView[] }>('/refused')).body;
  expect(items).toHaveLength(Math.min(200, blanks));
  expect(items[0]?.id ?? 0).toBe(blanks);
  for (const { reason, where } of items) {
    expect(reason).toContain('has neither "temperature" nor "humidity"');
    expect(where).toMatch(/^\/\d+$/);
  }
}

function expectDays({ days, readings }: RecordDocument): void {
  expect(days).toHaveLength(Math.ceil((lastMs - firstMs) / DAY_MS));
  const warmth = readings.flatMap((one) => pointOf(one, one.temperature, one.temperatureFlag));
  const moisture = readings.flatMap((one) => pointOf(one, one.humidity, one.humidityFlag));
  const moist = new Set(moisture.map(({ ms }) => ms));
  const both = warmth.filter(({ ms }) => moist.has(ms));
  for (const { day, from, to, temperature, humidity, unknownHours } of days) {
    const span = [Date.parse(from), Date.parse(to)] as const;
    expectClose(temperature.mean, integrate(warmth, span).mean, `temperature of day ${day}`);
    expectClose(humidity.mean, integrate(moisture, span).mean, `humidity of day ${day}`);
    const unknownMs = span[1] - span[0] - integrate(both, span).knownMs;
    expectClose(unknownHours, unknownMs / HOUR_MS, `unknown hours of day ${day}`);
  }
}

function expectClose(value: number | null, expected: number | null, what: string): void {
  if (expected === null) expect(value, what).toBeNull();
  else expect(Math.abs((value ?? Number.NaN) - expected), `${what}: ${value}, not ${expected}`).toBeLessThan(1e-6);
}

interface Point {
  readonly ms: number;
  readonly value: number;
}

/** A good value (flag 1 or 2) and its time; nothing when there is none. */
function pointOf({ time }: RecordReading, value: number | null, flag: number): Point[] {
  return value !== null && flag <= 2 ? [{ ms: Date.parse(time), value }] : [];
}

/** The mean over the time that is known: trapezoids between points no further apart than the probe's silence, cut at the ends of the day. */
function integrate(points: readonly Point[], [fromMs, toMs]: readonly [number, number]) {
  let area = 0;
  let knownMs = 0;
  for (const [index, right] of points.entries()) {
    const left = points[index - 1];
    if (left === undefined || right.ms - left.ms > SILENCE_MS) continue;
    const [start, end] = [Math.max(left.ms, fromMs), Math.min(right.ms, toMs)];
    if (end <= start) continue;
    const slope = (right.value - left.value) / (right.ms - left.ms);
    const middle = left.value + slope * ((start + end) / 2 - left.ms);
    area += middle * (end - start);
    knownMs += end - start;
  }
  return { mean: knownMs === 0 ? null : area / knownMs, knownMs };
}

it('tests on a series of the shape it is meant for', () => {
  const measuredBy = (sensor: 0 | 1) => rows.filter(({ sensors }) => sensors[sensor].temperature !== null);
  const gapsOf = (series: readonly GreenhouseRow[]) =>
    series.filter(({ timeMs }, index) => timeMs - (series[index - 1]?.timeMs ?? timeMs) > SILENCE_MS);
  expect(rows.length).toBeGreaterThan(12_000);
  expect(rows.length - measuredBy(0).length).toBeGreaterThan(20);
  expect(rows.length - measuredBy(1).length).toBeGreaterThan(1_000);
  expect(gapsOf(measuredBy(0))).toHaveLength(2);
  expect(gapsOf(measuredBy(1)).length).toBeGreaterThanOrEqual(2);
});
