// The record of a batch from a real store: nothing left out, and figures that anybody can compute again.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { gatherRecord } from '../../../server/record/gather-record.ts';
import { type BatchRecord, batchRecordSchema } from '../../../shared/api/record.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import {
  batch,
  CLOSED_MS,
  canopyReadings,
  FINISHED_MS,
  GAP,
  OPENED_MS,
  openSampleBatch,
  PEAK_MS,
  request,
  type SampleBatch,
  SILENCE_MS,
} from './sample-batch.ts';

let sample: SampleBatch;
let record: BatchRecord;
beforeAll(async () => {
  sample = await openSampleBatch();
  record = (await gatherRecord(sample.store, batch.id, request)).record;
});
afterAll(() => sample.close());

type Point = readonly [ms: number, value: number];

function goodPoints(quantity: 'temperature' | 'humidity'): Point[] {
  return canopyReadings().flatMap((one) => {
    const value = one[quantity];
    return value === null || one[`${quantity}Flag`] > 2 ? [] : [[one.timeMs, value] as const];
  });
}

/** The rule in the record's "computation" text, worked out here in another way: by small steps of one second. */
function meanBySeconds(points: readonly Point[], fromMs: number, toMs: number): number {
  let sum = 0;
  let seconds = 0;
  let index = 0;
  for (let ms = fromMs + 500; ms < toMs; ms += 1000) {
    while ((points[index + 1]?.[0] ?? Infinity) < ms) index += 1;
    const [a, b] = [points[index], points[index + 1]];
    if (a === undefined || b === undefined || a[0] > ms || b[0] - a[0] > SILENCE_MS) continue;
    sum += a[1] + ((b[1] - a[1]) * (ms - a[0])) / (b[0] - a[0]);
    seconds += 1;
  }
  return sum / seconds;
}

describe('gatherRecord', () => {
  it('gives a record of the shape that the interface describes', () => {
    expect(batchRecordSchema.parse(record)).toEqual(record);
  });

  it('says what was planted, where, by which plan and what came of it', () => {
    expect(record.batch).toMatchObject({
      code: '=B-17',
      chamberName: 'Tent 1',
      plants: 1000,
      takenPlants: 942,
      take: 0.942,
    });
    expect(record.site).toEqual({ name: 'Lindehof', zone: 'Europe/Amsterdam', altitudeM: 12 });
    expect(record.profile).toMatchObject({ id: 'tomato-common-practice', version: 1 });
    expect(record.profile.document.stages.length).toBeGreaterThan(0);
    expect(record.version).toBe('1.2.3');
  });

  it('keeps the plan beside what became of it', () => {
    const ends = (spans: BatchRecord['stages']['planned']) => spans.map(({ stage, endsAt }) => [stage, endsAt]);
    expect(ends(record.stages.actual)).toEqual([
      ['loading', utcText(CLOSED_MS)],
      ['closed', utcText(FINISHED_MS)],
    ]);
    expect(record.stages.planned.map(({ stage }) => stage)).toEqual(['loading', 'closed', 'venting', 'hardening']);
    expect(record.holds).toEqual([{ from: utcText(CLOSED_MS + 40 * HOUR_MS), to: utcText(CLOSED_MS + 44 * HOUR_MS) }]);
  });

  it('counts healing days as elapsed hours over the end of summer time, the last one cut at the end', () => {
    expect(
      record.days.map(({ day, from, to }) => [day, Date.parse(from) - CLOSED_MS, Date.parse(to) - CLOSED_MS]),
    ).toEqual([
      [1, 0, 24 * HOUR_MS],
      [2, 24 * HOUR_MS, 48 * HOUR_MS],
      [3, 48 * HOUR_MS, 58 * HOUR_MS],
    ]);
  });

  it.each(['temperature', 'humidity'] as const)(
    'gives the mean %s of every day as its own rule computes it',
    (quantity) => {
      const points = goodPoints(quantity);
      for (const { from, to, [quantity]: spread } of [...record.days, record.whole].flatMap((one) => one ?? [])) {
        expect(spread.mean).toBeCloseTo(meanBySeconds(points, Date.parse(from), Date.parse(to)), 5);
      }
    },
  );

  it('never lets a failed reading into a figure', () => {
    const highest = Math.max(...goodPoints('temperature').map(([, value]) => value));
    expect(canopyReadings().some(({ temperature }) => temperature === 71)).toBe(true);
    expect(record.whole?.temperature.max).toBe(highest);
  });

  it('shows the hours in which nothing is known, and the gap of the probe', () => {
    expect(record.days.map(({ unknownHours }) => unknownHours)).toEqual([0, 2, 0]);
    expect(record.gaps).toEqual([{ probe: '@canopy', from: utcText(GAP.fromMs), to: utcText(GAP.toMs), minutes: 120 }]);
  });

  it('counts every reading by its flag, for each probe and in all', () => {
    const readings = canopyReadings();
    const failed = readings.filter(({ temperatureFlag }) => temperatureFlag === 4).length;
    const missing = readings.filter(({ humidityFlag }) => humidityFlag === 9).length;
    const [canopy, house] = record.probes;
    expect(canopy).toMatchObject({
      place: 'canopy',
      readings: readings.length,
      lateReadings: readings.filter(({ late }) => late).length,
    });
    expect(canopy?.quality.temperature).toEqual({
      pass: readings.length - failed,
      notEvaluated: 0,
      suspect: 0,
      fail: failed,
      missing: 0,
    });
    expect(canopy?.quality.humidity).toEqual({
      pass: readings.length - missing,
      notEvaluated: 0,
      suspect: 0,
      fail: 0,
      missing,
    });
    expect(record.quality).toMatchObject({
      fail: failed,
      missing,
      pass: 2 * readings.length - failed - missing + 2 * (house?.readings ?? 0),
    });
  });

  it('finds the heat of the afternoon, with its peak and degree-hours', () => {
    const [heat, ...others] = record.excursions.filter(
      ({ quantity, side }) => quantity === 'temperature' && side === 'high',
    );
    expect(others).toEqual([]);
    expect(heat?.peak).toBe(record.whole?.temperature.max);
    expect(Math.abs(Date.parse(heat?.peakAt ?? '') - PEAK_MS)).toBeLessThan(15 * MINUTE_MS);
    // The limit is 28 °C throughout, so that the excursion is the time and the degree-hours above 28.
    expect(heat?.minutes).toBeCloseTo(record.whole?.minutesAbove['28'] ?? Number.NaN, 4);
    expect(heat?.degreeHours).toBeCloseTo(record.whole?.degreeHoursAbove['28'] ?? Number.NaN, 4);
  });

  it('tells the whole life of every alarm: who took it, and when', () => {
    expect(record.alarms).toHaveLength(1);
    expect(record.alarms[0]).toMatchObject({ rule: 'heat', limit: 28, acknowledgedBy: 'Bram', state: 'normal' });
    expect(record.alarms[0]?.events.map(({ change, from, to, person }) => [change, from, to, person])).toEqual([
      ['occurred', 'normal', 'unacknowledged', null],
      ['acknowledged', 'unacknowledged', 'acknowledged', 'Bram'],
      ['returned', 'acknowledged', 'normal', null],
    ]);
  });

  it('shows the checks that were answered and those that were missed', () => {
    const filmWet = record.checks.find(({ checkId }) => checkId === 'film-wet.1');
    expect(filmWet).toMatchObject({ status: 'answered', answer: 'yes', answeredBy: 'Bram', note: 'wet all over' });
    expect(record.checks.filter(({ status }) => status === 'missed').map(({ checkId }) => checkId)).toContain(
      'scions-erect.1',
    );
    expect(record.checks.every(({ dueAt }) => dueAt !== null && Date.parse(dueAt) < FINISHED_MS)).toBe(true);
  });

  it('records a batch that is still going on up to now, and one that was never closed without days', async () => {
    const open = { ...batch, id: 'b-open', chamberId: 'tent-2', closedMs: null };
    await sample.store.batches.add(open);
    const nowMs = OPENED_MS + HOUR_MS;
    const { record: unfinished } = await gatherRecord(sample.store, 'b-open', { ...request, nowMs });
    expect(unfinished).toMatchObject({ days: [], whole: null, excursions: [] });
    expect(unfinished.batch.chamberName).toBe('tent-2');
    expect(unfinished.probes.map(({ place, to }) => [place, to])).toEqual([['house', utcText(nowMs)]]);
  });

  it('moves what is still to come by the holds, and leaves the plan as it was made', async () => {
    const held = { ...batch, id: 'b-held', chamberId: 'tent-3' };
    await sample.store.batches.add(held);
    await sample.store.batches.startHold('b-held', CLOSED_MS + 10 * HOUR_MS);
    await sample.store.batches.endHold('b-held', CLOSED_MS + 34 * HOUR_MS);
    const nowMs = CLOSED_MS + 40 * HOUR_MS;
    const { stages } = (await gatherRecord(sample.store, 'b-held', { ...request, nowMs })).record;
    const venting = (spans: BatchRecord['stages']['planned']) =>
      spans.find(({ stage }) => stage === 'venting')?.startsAt;
    // Seven in the morning in winter time: of the fifth day as planned, a day later as held.
    expect([venting(stages.planned), venting(stages.actual)]).toEqual(['2026-10-29T06:00:00Z', '2026-10-30T06:00:00Z']);
  });

  it('says so when there is no such batch', async () => {
    await expect(gatherRecord(sample.store, 'b-none', request)).rejects.toMatchObject({ code: 'not-found' });
  });
});

it('says what its figures are worth, for how long the film was expected wet, and who disagreed', () => {
  const { whole, film, probes, computation } = record;
  expect(whole?.plusMinus).toMatchObject({ temperature: 0.2, humidity: 2 });
  // 2 %RH near 25 °C are 0.063 kPa (published values, §2); the means of the sample are near it.
  const knownHours = (FINISHED_MS - CLOSED_MS) / HOUR_MS - (whole?.unknownHours ?? 0);
  expect((whole?.plusMinus.vpdKpaHours ?? 0) / knownHours).toBeGreaterThan(0.04);
  expect((whole?.plusMinus.vpdKpaHours ?? 0) / knownHours).toBeLessThan(0.08);
  expect(film.wetHours + film.dryHours + film.unknownHours).toBeCloseTo((FINISHED_MS - CLOSED_MS) / HOUR_MS, 5);
  expect(film.unknownHours).toBeGreaterThanOrEqual((GAP.toMs - GAP.fromMs) / HOUR_MS);
  expect(probes.map(({ disagreement }) => disagreement.hours)).toEqual(probes.map(() => 0));
  expect(computation.join(' ')).toMatch(/disagrees when fewer than half.*never a look/);
});
