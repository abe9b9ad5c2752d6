// Calibrating a probe over HTTP: what is refused, the history, and that everything shown and judged is calibrated from the entry's date on.
import { describe, expect, it } from 'vitest';
import type { CalibrationView } from '../../../shared/api/calibrations.ts';
import type { ClimateSeries } from '../../../shared/api/chambers.ts';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import type { ProbeView } from '../../../shared/api/probes.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openTent, TENT_MS, type Tent } from '../../support/open-tent.ts';
import { readRange } from '../../support/open-test-store.ts';

interface List<T> {
  readonly items: readonly T[];
}

const calibrationsOf = ({ probeId }: Tent) => `/probes/${probeId}/calibrations`;
const twoSalts = {
  kind: 'two-point',
  humidity: [
    { reference: 75.3, measured: 77.3 },
    { reference: 97.3, measured: 97.3 },
  ],
};

describe('a calibration', () => {
  it('is answered as it was kept, with who entered it and when', async () => {
    const tent = await openTent();
    const from = utcText(TENT_MS - HOUR_MS);
    const wanted = { kind: 'offset', from, temperature: { offset: -0.3 }, note: 'against the reference thermometer' };
    const { status, body } = await tent.api.post<CalibrationView>(calibrationsOf(tent), wanted);
    expect(status).toBe(201);
    expect(body).toEqual({
      ...wanted,
      id: expect.any(String),
      humidity: null,
      enteredAt: utcText(TENT_MS),
      enteredBy: 'Test manager',
    });
  });

  it('holds from now on when it says no date', async () => {
    const tent = await openTent();
    const { body } = await tent.api.post<CalibrationView>(calibrationsOf(tent), twoSalts);
    expect(body).toMatchObject({ ...twoSalts, from: utcText(TENT_MS), temperature: null, note: '' });
  });

  it('stays in the history with all others, in the order in which they begin', async () => {
    const tent = await openTent();
    const entry = (hours: number, offset: number) =>
      tent.api.post(calibrationsOf(tent), {
        ...{ kind: 'offset', from: utcText(TENT_MS + hours * HOUR_MS), humidity: { offset } },
      });
    await entry(-1, 1);
    await entry(-2, 2);
    await entry(-1, 3);
    const { items } = (await tent.api.get<List<CalibrationView>>(calibrationsOf(tent))).body;
    expect(items.map(({ humidity }) => humidity)).toEqual([{ offset: 2 }, { offset: 1 }, { offset: 3 }]);
    const reopened = await tent.reopen();
    expect((await reopened.api.get<List<CalibrationView>>(calibrationsOf(reopened))).body.items).toEqual(items);
  });

  it.each([
    [{ kind: 'offset' }, ''],
    [{ kind: 'offset', temperature: { offset: 3.01 } }, '/temperature/offset'],
    [{ kind: 'offset', humidity: { offset: -10.01 } }, '/humidity/offset'],
    [{ kind: 'offset', temperature: { offset: 'warm' } }, '/temperature/offset'],
    [{ kind: 'offset', from: 'yesterday', temperature: { offset: 1 } }, '/from'],
    [{ kind: 'two-point', humidity: [{ reference: 75.3, measured: 77.3 }] }, '/humidity'],
    [{ ...twoSalts, humidity: [twoSalts.humidity[0], twoSalts.humidity[0]] }, '/humidity'],
    [{ ...twoSalts, humidity: [twoSalts.humidity[0], { reference: 97.3, measured: 80 }] }, '/humidity/1/measured'],
  ])('%j is refused with its place: %s', async (body, where) => {
    const tent = await openTent();
    const answer = await tent.api.post<ProblemDetails>(calibrationsOf(tent), body);
    expect(answer.status).toBe(400);
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
    expect(answer.body.faults?.map((fault) => fault.where)).toContain(where);
    expect((await tent.api.get<List<CalibrationView>>(calibrationsOf(tent))).body.items).toEqual([]);
  });

  it('needs a probe that is known', async () => {
    const { api } = await openTent();
    expect((await api.get('/probes/p99/calibrations')).status).toBe(404);
    expect((await api.post('/probes/p99/calibrations', twoSalts)).status).toBe(404);
  });
});

describe('a calibrated probe', () => {
  it('gives the climate at once, also after a restart, and its readings stay raw', async () => {
    const tent = await openTent();
    await tent.measure(25, 90);
    await tent.api.post(calibrationsOf(tent), {
      ...{ kind: 'offset', from: utcText(TENT_MS), temperature: { offset: 0.5 }, humidity: { offset: -2 } },
    });
    expect((await tent.chamber()).climate).toMatchObject({ temperature: 25.5, humidity: 88, hottest: 25.5 });
    const last = (await tent.api.get<List<ProbeView>>('/probes')).body.items[0]?.last;
    expect(last).toMatchObject({ temperature: 25.5, humidity: 88, rawTemperature: 25, rawHumidity: 90 });
    expect(await readRange(tent.app.store)).toMatchObject([{ temperature: 25, humidity: 90 }]);
    const reopened = await tent.reopen();
    expect((await reopened.chamber()).climate).toMatchObject({ temperature: 25.5, humidity: 88 });
  });

  it('is corrected from the date of the entry on and not before', async () => {
    const tent = await openTent();
    await tent.measure(25, 90);
    const from = utcText(TENT_MS + MINUTE_MS);
    await tent.api.post(calibrationsOf(tent), { kind: 'offset', from, temperature: { offset: 0.5 } });
    expect((await tent.chamber()).climate.temperature).toBe(25);
    tent.clock.advance(MINUTE_MS - 1);
    await tent.measure(25, 90);
    expect((await tent.chamber()).climate.temperature).toBe(25);
    tent.clock.advance(1);
    await tent.measure(25, 90);
    expect((await tent.chamber()).climate.temperature).toBe(25.5);
  });

  it('raises the heat alarm by its calibrated value, and an entry ends an alarm that it shows to be none', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.api.post(calibrationsOf(tent), { kind: 'offset', temperature: { offset: 1 } });
    await tent.stay(27.5, 2 * MINUTE_MS);
    expect((await tent.alarms()).find(({ rule }) => rule === 'heat')).toMatchObject({ value: 28.5 });
    await tent.api.post(calibrationsOf(tent), { kind: 'offset', temperature: { offset: 0 } });
    await tent.stay(27, 10 * MINUTE_MS);
    expect((await tent.alarms()).find(({ rule }) => rule === 'heat')?.state).toBe('returned-unacknowledged');
  });

  it('is judged by its raw values: a correction hides no impossible humidity', async () => {
    const tent = await openTent();
    await tent.api.post(calibrationsOf(tent), { kind: 'offset', humidity: { offset: -5 } });
    await tent.measure(25, 103);
    const last = (await tent.api.get<List<ProbeView>>('/probes')).body.items[0]?.last;
    expect(last).toMatchObject({ humidity: 98, rawHumidity: 103, humidityFlag: 3 });
  });

  it('is charted calibrated, with the change inside a bucket', async () => {
    const tent = await openTent();
    for (let minute = 0; minute < 20; minute += 1) {
      await tent.measure(20, 80);
      tent.clock.advance(MINUTE_MS);
    }
    const from = utcText(TENT_MS + 5 * MINUTE_MS);
    await tent.api.post(calibrationsOf(tent), { kind: 'offset', from, temperature: { offset: 1 } });
    const query = `from=${utcText(TENT_MS)}&to=${utcText(TENT_MS + 20 * MINUTE_MS)}&points=10`;
    const { temperature } = (await tent.api.get<ClimateSeries>(`/chambers/${tent.chamberId}/climate?${query}`)).body;
    expect(temperature.mean.slice(0, 4)).toEqual([20, 20, 20.5, 21]);
    expect(temperature.min.slice(0, 4)).toEqual([20, 20, 20, 21]);
    expect(temperature.max.slice(0, 4)).toEqual([20, 20, 21, 21]);
  });

  it('in the house corrects the air of the house', async () => {
    const tent = await openTent();
    await tent.api.patch(`/probes/${tent.probeId}`, { place: 'house' });
    await tent.measure(20, 60);
    await tent.api.post(calibrationsOf(tent), { kind: 'offset', humidity: { offset: 4 } });
    expect((await tent.chamber()).house).toEqual({ temperature: 20, humidity: 64 });
  });
});
