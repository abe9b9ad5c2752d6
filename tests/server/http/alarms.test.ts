// Alarms over HTTP: the list, its pages, and what people do to one.
import { describe, expect, it } from 'vitest';
import type { AlarmView } from '../../../shared/api/alarms.ts';
import type { ChamberView } from '../../../shared/api/chambers.ts';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openBatch, openHotTent, openTent, type Tent } from '../../support/open-tent.ts';

interface Page {
  readonly items: readonly AlarmView[];
  readonly nextCursor: string | null;
}

/** A tent with so many alarms in its past, a minute apart, the newest still unacknowledged. */
async function openPast(count: number): Promise<Tent> {
  const tent = await openTent();
  await openBatch(tent);
  for (let n = 0; n < count; n += 1) {
    await tent.stay(28.5, MINUTE_MS);
    const [alarm] = await tent.alarms('unacknowledged');
    if (n === count - 1) break;
    await tent.api.post(`/alarms/${alarm?.id}/acknowledge`);
    tent.clock.advance(10 * SECOND_MS);
    await tent.stay(26, MINUTE_MS);
    tent.clock.advance(10 * SECOND_MS);
  }
  return tent;
}

async function readAll(tent: Tent, query: string): Promise<AlarmView[]> {
  const all: AlarmView[] = [];
  let cursor: string | null = '';
  for (let pages = 0; cursor !== null && pages < 20; pages += 1) {
    const more: string = cursor === '' ? '' : `&cursor=${encodeURIComponent(cursor)}`;
    const { body }: { body: Page } = await tent.api.get<Page>(`/alarms?${query}${more}`);
    all.push(...body.items);
    cursor = body.nextCursor;
  }
  return all;
}

describe('an alarm', () => {
  it('is sent with its names, its sentence and what to do first', async () => {
    const { hot, batch, chamberId } = await openHotTent();
    expect(hot).toMatchObject({
      ...{ chamberId, chamberName: 'Tent 1', batchId: batch.id, batchCode: 'T-1', rule: 'heat', probeId: null },
      ...{ state: 'unacknowledged', level: 1, priority: 'high', limit: 28, value: 28.5, peak: 28.5 },
      ...{ since: '2026-03-01T12:00:00Z', occurredAt: '2026-03-01T12:01:00Z', peakAt: '2026-03-01T12:00:00Z' },
      sentence: '▲ Hot: 28.5 °C, limit 28 for 1 min',
      advice: 'Shade now. Open the gap a hand’s width and mist the film.',
    });
  });

  it('says the value as it is now, and the worst it was', async () => {
    const tent = await openHotTent();
    tent.clock.advance(MINUTE_MS);
    await tent.measure(29.2);
    tent.clock.advance(MINUTE_MS);
    await tent.measure(28.1);
    expect((await tent.alarms())[0]).toMatchObject({
      value: 28.1,
      peak: 29.2,
      sentence: '▲ Hot: 28.1 °C, limit 28 for 3 min',
    });
  });

  it('says the limit as it is now, when the plan has moved on since it was told', async () => {
    const tent = await openTent();
    // Venting began at seven this morning; the limits come down in steps of twelve hours.
    await openBatch(tent, {}, 102 * HOUR_MS);
    await tent.stay(24, 5 * MINUTE_MS, 50);
    const [before] = await tent.alarms();
    expect(before).toMatchObject({ rule: 'dry', limit: 75, priority: 'critical' });
    tent.clock.advance(10 * HOUR_MS);
    await tent.measure(24, 50);
    const after = (await tent.alarms()).find(({ rule }) => rule === 'dry');
    expect(after).toMatchObject({ limit: 65, sentence: '▽ Far too dry: 50 %, below 65; drying for 10 h 5 min' });
  });

  it('says the last value it knew when nobody measures any more', async () => {
    const tent = await openHotTent();
    tent.clock.advance(30 * MINUTE_MS);
    const hot = (await tent.alarms()).find(({ rule }) => rule === 'heat');
    expect(hot).toMatchObject({ value: 28.5, sentence: '▲ Hot: 28.5 °C, limit 28 for 31 min' });
  });

  it('is shown with its chamber, the worst of all first: what nobody has taken, then by priority', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.api.post('/probes', { nodeId: 'n1', address: 'b', chamberId: tent.chamberId });
    await tent.stay(28.5, 12 * MINUTE_MS, 84);
    const rules = async () =>
      (await tent.api.get<ChamberView>(`/chambers/${tent.chamberId}`)).body.alarms.map(({ rule }) => rule);
    expect(await rules()).toEqual(['dry', 'heat', 'silent-probe']);
    const dry = (await tent.alarms()).find(({ rule }) => rule === 'dry');
    await tent.api.post(`/alarms/${dry?.id}/acknowledge`);
    expect(await rules()).toEqual(['heat', 'silent-probe', 'dry']);
  });
});

describe('the list', () => {
  it('has the newest first, page by page, each alarm once', async () => {
    const tent = await openPast(5);
    const whole = await readAll(tent, 'limit=500');
    expect(whole).toHaveLength(5);
    const times = whole.map(({ occurredAt }) => occurredAt);
    expect(times).toEqual([...times].sort().reverse());
    expect(await readAll(tent, 'limit=2')).toEqual(whole);
    expect(await readAll(tent, 'limit=1')).toEqual(whole);
    expect(await readAll(tent, 'limit=5')).toEqual(whole);
  });

  it('is by state, by "active" and by chamber', async () => {
    const tent = await openPast(3);
    const count = async (query: string) => (await readAll(tent, query)).length;
    expect(await count('state=normal')).toBe(2);
    expect(await count('state=active')).toBe(1);
    expect(await count('state=unacknowledged')).toBe(1);
    expect(await count('state=shelved')).toBe(0);
    expect(await count(`chamberId=${tent.chamberId}`)).toBe(3);
    expect(await count('chamberId=another')).toBe(0);
    expect(await count('state=normal&limit=1')).toBe(2);
  });

  it('of a chamber without any is empty, and that is the last page', async () => {
    const { api } = await openTent();
    expect((await api.get<Page>('/alarms')).body).toEqual({ items: [], nextCursor: null });
  });
});

describe('what people do', () => {
  it('to acknowledge, shelve and unshelve answers with the alarm as it is then', async () => {
    const { api, hot } = await openHotTent();
    const act = async (what: string, body?: object) =>
      (await api.post<AlarmView>(`/alarms/${hot.id}/${what}`, body)).body;
    expect(await act('acknowledge')).toMatchObject({
      state: 'acknowledged',
      acknowledgedBy: 'Test manager',
      acknowledgedAt: '2026-03-01T12:01:00Z',
    });
    expect(await act('shelve', { minutes: 45, reason: 'fan on its way' })).toMatchObject({
      state: 'shelved',
      shelvedUntil: '2026-03-01T12:46:00Z',
      shelvedReason: 'fan on its way',
    });
    expect(await act('unshelve')).toMatchObject({ state: 'unacknowledged', shelvedUntil: null, acknowledgedBy: null });
  });

  it('is signed with the name of a token too', async () => {
    const { app, api, hot } = await openHotTent();
    const { body } = await api.post<{ token: string }>('/tokens', { name: 'Wall button', scope: 'full' });
    await fetch(`${app.url}/api/v1/alarms/${hot.id}/acknowledge`, {
      method: 'POST',
      headers: { authorization: `Bearer ${body.token}` },
    });
    expect(await app.store.alarms.get(hot.id)).toMatchObject({ acknowledgedBy: 'Wall button' });
  });

  it('that changes nothing is answered with its reason', async () => {
    const { api, hot } = await openHotTent();
    const refusal = async (what: string, body?: object) =>
      (await api.post<ProblemDetails>(`/alarms/${hot.id}/${what}`, body)).body;
    expect(await refusal('unshelve')).toMatchObject({
      status: 409,
      detail: 'The alarm is not acknowledged: this changes nothing.',
    });
    await api.post(`/alarms/${hot.id}/acknowledge`);
    expect(await refusal('acknowledge')).toMatchObject({
      status: 409,
      detail: 'Test manager has acknowledged it already.',
    });
  });

  it('to an alarm that is over, or never was, is refused', async () => {
    const tent = await openHotTent();
    await tent.api.post(`/alarms/${tent.hot.id}/acknowledge`);
    tent.clock.advance(10 * SECOND_MS);
    await tent.stay(26, MINUTE_MS);
    const over = await tent.api.post<ProblemDetails>(`/alarms/${tent.hot.id}/acknowledge`);
    expect(over.body).toMatchObject({ status: 409, detail: 'This alarm is over: there is nothing left to do.' });
    expect((await tent.api.post('/alarms/none/acknowledge')).status).toBe(404);
  });

  it.each([
    [{ minutes: 0, reason: 'mending' }, 400],
    [{ minutes: 1, reason: 'mending' }, 200],
    [{ minutes: 24 * 60, reason: 'mending' }, 200],
    [{ minutes: 24 * 60 + 1, reason: 'mending' }, 400],
    [{ minutes: 30, reason: '' }, 400],
    [{ minutes: 30 }, 400],
  ])('a shelf of %j is answered %i: never for ever, never without a reason', async (body, status) => {
    const { api, hot } = await openHotTent();
    expect((await api.post(`/alarms/${hot.id}/shelve`, body)).status).toBe(status);
  });
});
