// The series behind a chart: buckets on one grid, true gaps, spikes that no zoom hides, the house beside the tent, and the limits as planned.
import { describe, expect, it } from 'vitest';
import { makeGrid } from '../../../server/views/climate-series.ts';
import type { ClimateSeries } from '../../../shared/api/chambers.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openTent, TENT_MS, TENT_PROFILE, type Tent } from '../../support/open-tent.ts';

async function seriesOf(tent: Tent, query: { fromMs?: number; toMs?: number; points?: number } = {}) {
  const parameters = new URLSearchParams({
    ...(query.fromMs !== undefined && { from: utcText(query.fromMs) }),
    ...(query.toMs !== undefined && { to: utcText(query.toMs) }),
    ...(query.points !== undefined && { points: String(query.points) }),
  });
  return tent.api.get<ClimateSeries & { detail: string }>(`/chambers/${tent.chamberId}/climate?${parameters}`);
}

function columnsOf({ temperature, humidity, corridor, ...rest }: ClimateSeries): (number | null)[][] {
  return [
    ...Object.values(temperature),
    ...Object.values(humidity),
    ...Object.values(corridor.temperature),
    ...Object.values(corridor.humidity),
    ...[rest.houseTemperature, rest.houseHumidity, rest.badShare],
  ];
}

describe('the grid', () => {
  it.each([
    { fromMs: 0, toMs: HOUR_MS, points: 60, bucketMs: MINUTE_MS, count: 60, why: 'a minute each' },
    { fromMs: 0, toMs: HOUR_MS, points: 59, bucketMs: 2 * MINUTE_MS, count: 30, why: 'whole minutes from a minute on' },
    { fromMs: 0, toMs: HOUR_MS, points: 61, bucketMs: MINUTE_MS, count: 60, why: 'whole seconds below' },
    { fromMs: 0, toMs: 10 * MINUTE_MS, points: 100, bucketMs: 6 * SECOND_MS, count: 100, why: 'six seconds each' },
    { fromMs: 0, toMs: 1, points: 10, bucketMs: SECOND_MS, count: 1, why: 'never less than a second' },
    {
      fromMs: 30_500,
      toMs: HOUR_MS + 30_500,
      points: 30,
      bucketMs: 3 * MINUTE_MS,
      count: 21,
      why: 'begins on a minute',
    },
  ])('of $points from $fromMs to $toMs has $count buckets: $why', ({ fromMs, toMs, points, bucketMs, count }) => {
    expect(makeGrid({ fromMs, toMs, points })).toMatchObject({ bucketMs, count });
  });

  it('never has more buckets than were asked for, covers the stretch, and begins at or before it', () => {
    for (const toMs of [7 * SECOND_MS, 5 * MINUTE_MS, 3 * HOUR_MS, 9 * DAY_MS])
      for (const points of [10, 37, 300, 2000])
        for (const startMs of [TENT_MS, TENT_MS + 1, TENT_MS + 59_999]) {
          const grid = makeGrid({ fromMs: startMs, toMs: startMs + toMs, points });
          expect(grid.count).toBeLessThanOrEqual(points);
          expect(grid.fromMs).toBeLessThanOrEqual(startMs);
          expect(grid.fromMs + grid.count * grid.bucketMs).toBeGreaterThanOrEqual(startMs + toMs);
        }
  });
});

describe('a series', () => {
  it('has every column at the same length, whatever is known', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.stay(24, MINUTE_MS);
    const { body } = await seriesOf(tent, { fromMs: TENT_MS - HOUR_MS, toMs: TENT_MS + HOUR_MS, points: 120 });
    expect(body).toMatchObject({
      startsAt: utcText(TENT_MS - HOUR_MS),
      bucketSeconds: 60,
      now: utcText(TENT_MS + MINUTE_MS),
    });
    const lengths = new Set(columnsOf(body).map((column) => column.length));
    expect([...lengths]).toEqual([120]);
  });

  it('leaves a gap where nobody measured: null, neither zero nor a line across', async () => {
    const tent = await openTent();
    await tent.measure(24, 95);
    tent.clock.advance(5 * MINUTE_MS);
    await tent.measure(25, 93);
    const { body } = await seriesOf(tent, { fromMs: TENT_MS, toMs: TENT_MS + 10 * MINUTE_MS, points: 10 });
    const gaps = [null, null, null, null];
    expect(body.temperature.mean).toEqual([24, ...gaps, 25, ...gaps]);
    expect(body.humidity.min).toEqual([95, ...gaps, 93, ...gaps]);
    expect(body.badShare).toEqual([0, ...gaps, 0, ...gaps]);
  });

  it('keeps a spike of one reading at every zoom', async () => {
    const tent = await openTent();
    for (const temperature of [24, 26, 24, 22, 24]) {
      await tent.measure(temperature);
      tent.clock.advance(MINUTE_MS);
    }
    for (const points of [10, 300, 2000]) {
      const { body } = await seriesOf(tent, { fromMs: TENT_MS - 10 * DAY_MS, toMs: TENT_MS + HOUR_MS, points });
      const known = (column: (number | null)[]) => column.filter((value) => value !== null);
      expect(Math.max(...known(body.temperature.max))).toBe(26);
      expect(Math.min(...known(body.temperature.min))).toBe(22);
    }
  });

  it('is the same by the minute and by the reading', async () => {
    const tent = await openTent();
    await tent.stay(24, 2 * MINUTE_MS);
    const fine = (await seriesOf(tent, { fromMs: TENT_MS, toMs: TENT_MS + 2 * MINUTE_MS, points: 12 })).body;
    const coarse = (await seriesOf(tent, { fromMs: TENT_MS, toMs: TENT_MS + 10 * MINUTE_MS, points: 10 })).body;
    expect(fine.bucketSeconds).toBe(10);
    expect(fine.temperature.mean).toEqual(Array(12).fill(24));
    expect(coarse.temperature.mean.slice(0, 3)).toEqual([24, 24, 24]);
  });

  it('means over the probes of the chamber, each weighing the same however often it speaks', async () => {
    const tent = await openTent();
    await tent.api.post('/probes', { nodeId: 'n1', address: 'b', chamberId: tent.chamberId });
    for (const second of [0, 10, 20, 30]) {
      tent.clock.set(TENT_MS + second * SECOND_MS);
      await tent.measure(24, 95, 'a');
    }
    await tent.measure(26, 91, 'b');
    const { body } = await seriesOf(tent, { fromMs: TENT_MS, toMs: TENT_MS + 10 * MINUTE_MS, points: 10 });
    const first = ({ min, mean, max }: ClimateSeries['temperature']) => [min[0], mean[0], max[0]];
    expect(first(body.temperature)).toEqual([24, 25, 26]);
    expect(first(body.humidity)).toEqual([91, 93, 95]);
  });

  it('counts what is suspect or failed, and keeps it out of the values', async () => {
    const tent = await openTent();
    await tent.measure(24, 95);
    tent.clock.advance(10 * SECOND_MS);
    // 85 °C is what a sensor says that has just been switched on.
    await tent.measure(85, 95);
    const { body } = await seriesOf(tent, { fromMs: TENT_MS, toMs: TENT_MS + 10 * MINUTE_MS, points: 10 });
    expect(body.temperature.max[0]).toBe(24);
    expect(body.badShare[0]).toBe(0.5);
  });

  it('has the house beside it, and takes neither film nor house for the canopy', async () => {
    const tent = await openTent();
    await tent.api.post('/probes', { nodeId: 'n1', address: 'film', chamberId: tent.chamberId, place: 'film' });
    await tent.api.post('/probes', { nodeId: 'n1', address: 'house', place: 'house' });
    await tent.measure(24, 95);
    await tent.measure(19, 100, 'film');
    await tent.measure(18, 55, 'house');
    const { body } = await seriesOf(tent, { fromMs: TENT_MS, toMs: TENT_MS + 10 * MINUTE_MS, points: 10 });
    expect([body.temperature.min[0], body.temperature.max[0]]).toEqual([24, 24]);
    expect([body.houseTemperature[0], body.houseHumidity[0]]).toEqual([18, 55]);
  });

  it('follows a probe that moves: what it measured stays with the chamber in which it stood', async () => {
    const tent = await openTent();
    await tent.measure(24, 95);
    tent.clock.advance(5 * MINUTE_MS);
    const other = await tent.api.post<{ id: string }>('/chambers', { name: 'Tent 2' });
    await tent.api.patch(`/probes/${tent.probeId}`, { chamberId: other.body.id });
    await tent.measure(27, 90);
    const stretch = { fromMs: TENT_MS, toMs: TENT_MS + 10 * MINUTE_MS, points: 10 };
    const { body } = await seriesOf(tent, stretch);
    expect(body.temperature.max.filter((value) => value !== null)).toEqual([24]);
    const moved = await seriesOf({ ...tent, chamberId: other.body.id }, stretch);
    expect(moved.body.temperature.max.filter((value) => value !== null)).toEqual([27]);
  });
});

describe('the stretch that is shown when nobody asks for another', () => {
  it('is the last day of an empty chamber', async () => {
    const tent = await openTent();
    const { body } = await seriesOf(tent);
    expect(body.startsAt).toBe(utcText(TENT_MS - DAY_MS));
    expect(body.temperature.mean.length).toBeGreaterThan(200);
    expect(body.corridor.temperature.high.every((value) => value === null)).toBe(true);
    expect(body.events).toEqual([]);
  });

  it('is the whole healing of the batch that is in it, as planned, past and to come', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent);
    const { body } = await seriesOf(tent);
    expect(body.startsAt).toBe(batch.openedAt);
    const endMs = Date.parse(body.startsAt) + body.temperature.mean.length * body.bucketSeconds * SECOND_MS;
    expect(endMs).toBeGreaterThanOrEqual(Date.parse(batch.endsAt ?? ''));
    expect(body.corridor.temperature.high[0]).toBe(28);
    expect(body.corridor.humidity.low.at(-1)).toBeLessThan(90);
  });

  it.each([
    { fromMs: TENT_MS, toMs: TENT_MS, detail: 'The end of the chart lies before its start.' },
    { fromMs: TENT_MS, toMs: TENT_MS - 1000, detail: 'The end of the chart lies before its start.' },
    { fromMs: TENT_MS - 400 * DAY_MS - 1000, toMs: TENT_MS, detail: 'A chart shows at most 400 days.' },
  ])('is not from $fromMs to $toMs: $detail', async ({ detail, ...query }) => {
    const answer = await seriesOf(await openTent(), query);
    expect(answer.status).toBe(400);
    expect(answer.body.detail).toBe(detail);
  });

  it('is an hour of a batch that was opened this instant and whose end nobody knows', async () => {
    const tent = await openTent();
    await tent.api.post('/batches', { chamberId: tent.chamberId, profileId: TENT_PROFILE, code: 'T-1', plants: 10 });
    const { status, body } = await tent.api.get<ClimateSeries>(`/chambers/${tent.chamberId}/climate`);
    expect(status).toBe(200);
    expect(body.bucketSeconds * body.temperature.mean.length).toBeGreaterThanOrEqual(3600);
  });

  it('may be 400 days long', async () => {
    expect((await seriesOf(await openTent(), { fromMs: TENT_MS - 400 * DAY_MS, toMs: TENT_MS })).status).toBe(200);
  });
});

describe('the marks', () => {
  it('are the stages, holds, checks, log entries and alarms of the batch, in order of time', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent);
    await tent.stay(28.5, MINUTE_MS);
    await tent.api.post(`/batches/${batch.id}/log`, { kind: 'gap', gapPercent: 10, note: 'a hand' });
    await tent.api.post(`/batches/${batch.id}/hold`, { reason: 'limp' });
    const { body } = await seriesOf(tent);
    expect(body.events.map(({ at }) => at)).toEqual(body.events.map(({ at }) => at).sort());
    const marks = body.events.map(({ kind, what }) => `${kind} ${what}`);
    for (const mark of [
      'stage closed',
      'stage venting',
      'stage hardening',
      'log opened',
      'log closed',
      'log gap',
      'hold hold',
    ])
      expect(marks).toContain(mark);
    expect(body.events.filter(({ kind }) => kind === 'check').length).toBeGreaterThan(3);
    expect(body.events).toContainEqual({
      at: utcText(TENT_MS),
      until: null,
      kind: 'alarm',
      what: 'heat',
      label: 'Heat',
    });
    expect(body.events).toContainEqual({
      ...{ at: utcText(TENT_MS + MINUTE_MS), until: utcText(TENT_MS + MINUTE_MS) },
      ...{ kind: 'log', what: 'gap', label: 'a hand' },
      entry: expect.objectContaining({ kind: 'gap', gapPercent: 10, note: 'a hand', person: 'Test manager' }),
    });
    await tent.api.patch(`/batches/${batch.id}`, { moveOnTo: 'venting' });
    expect((await seriesOf(tent)).body.events).toContainEqual(
      expect.objectContaining({
        ...{ kind: 'log', what: 'moved-on', label: 'venting' },
        entry: expect.objectContaining({ stage: 'venting', note: '' }),
      }),
    );
  });

  it('show an alarm that came twice as two stretches, with the calm between', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.stay(28.5, MINUTE_MS);
    tent.clock.set(TENT_MS + 5 * MINUTE_MS);
    await tent.stay(26, MINUTE_MS);
    tent.clock.set(TENT_MS + 10 * MINUTE_MS);
    await tent.stay(28.5, MINUTE_MS);
    const { body } = await seriesOf(tent);
    const minute = (count: number) => utcText(TENT_MS + count * MINUTE_MS);
    const alarms = body.events.filter(({ kind }) => kind === 'alarm').map(({ at, until }) => [at, until]);
    expect(alarms).toEqual([
      [minute(1), minute(6)],
      [minute(10), null],
    ]);
  });

  it('of a past batch are shown when its time is asked for', async () => {
    const tent = await openTent();
    const batch = await openBatch(tent);
    await tent.api.post(`/batches/${batch.id}/finish`, { takenPlants: 900 });
    tent.clock.advance(DAY_MS);
    const past = await seriesOf(tent, { fromMs: TENT_MS - DAY_MS, toMs: TENT_MS, points: 24 });
    expect(past.body.events.map(({ what }) => what)).toContain('finished');
    expect(past.body.corridor.temperature.high[12]).toBe(28);
  });
});

describe('the forecast of a series', () => {
  const around = (tent: Tent) => ({ fromMs: tent.clock.nowMs() - HOUR_MS, toMs: tent.clock.nowMs() + HOUR_MS });

  it('begins at the last reading, and its middle goes where the tent is heading', async () => {
    const tent = await openTent();
    await openBatch(tent);
    for (let minute = 0; minute < 30; minute++) {
      tent.clock.advance(MINUTE_MS);
      await tent.measure(24 + minute / 10);
    }
    const { body } = await seriesOf(tent, around(tent));
    expect(body.forecast).toMatchObject({ from: utcText(tent.clock.nowMs()), minutes: [0, 2, 5, 10, 15, 20] });
    const { low, middle, high } = body.forecast ?? { low: [], middle: [], high: [] };
    expect(middle[0]).toBeCloseTo(26.9, 0);
    expect(middle.at(-1)).toBeGreaterThan(27.5);
    middle.forEach((value, index) => {
      expect(low[index]).toBeLessThanOrEqual(value);
      expect(high[index]).toBeGreaterThanOrEqual(value);
    });
  });

  it('is none when nothing fresh is known, and for a stretch of the past', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(24);
    const past = { fromMs: tent.clock.nowMs() - 2 * HOUR_MS, toMs: tent.clock.nowMs() - HOUR_MS };
    expect((await seriesOf(tent, past)).body.forecast).toBeNull();
    expect((await seriesOf(tent, around(tent))).body.forecast).not.toBeNull();
    tent.clock.advance(6 * MINUTE_MS);
    expect((await seriesOf(tent, around(tent))).body.forecast).toBeNull();
  });
});
