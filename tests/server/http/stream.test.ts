// The event stream as screens read it: what is said when, and how it ends.
import { describe, expect, it } from 'vitest';
import { MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { createApiClient } from '../../support/api-client.ts';
import { openBatch, openHotTent, openTent, type Tent } from '../../support/open-tent.ts';
import { openTestApp } from '../../support/open-test-app.ts';
import { readStream } from '../../support/read-stream.ts';

const read = ({ app, api }: Pick<Tent, 'app' | 'api'>) => readStream(app.url, { cookie: api.cookie() });

describe('the stream', () => {
  it('is one of server-sent events that nobody keeps or holds back', async () => {
    const stream = await read(await openTent());
    expect(stream.headers.get('content-type')).toBe('text/event-stream');
    expect(stream.headers.get('cache-control')).toBe('no-store');
    expect(stream.headers.get('x-accel-buffering')).toBe('no');
  });

  it('begins with how soon to come back and with the time', async () => {
    const stream = await read(await openTent());
    expect(await stream.next('hello')).toEqual({ event: 'hello', at: '2026-03-01T12:00:00Z' });
    expect(stream.text()).toMatch(/^retry: 2000\nevent: hello\n/);
  });

  it('says the climate of a chamber and its limits when a reading has come, and in a while which probe spoke', async () => {
    const tent = await openTent();
    await openBatch(tent);
    const stream = await read(tent);
    await tent.measure(24.5, 93);
    const climate = await stream.next('climate', (event) => event.climate.temperature !== null);
    expect(climate).toMatchObject({
      chamberId: tent.chamberId,
      climate: { temperature: 24.5, humidity: 93, at: '2026-03-01T12:00:00Z' },
      limits: { temperature: { high: 28 } },
    });
    expect(await stream.next('probe')).toMatchObject({ probeId: tent.probeId });
  });

  it('says an alarm with its batch, and again when somebody takes it', async () => {
    const tent = await openTent();
    await openBatch(tent);
    const stream = await read(tent);
    await tent.stay(28.5, MINUTE_MS);
    const raised = await stream.next('alarm', ({ alarm }) => alarm.rule === 'heat');
    expect(raised.alarm).toMatchObject({ state: 'unacknowledged', batchCode: 'T-1', chamberName: 'Tent 1' });
    await tent.api.post(`/alarms/${raised.alarm.id}/acknowledge`);
    const taken = await stream.next('alarm', ({ alarm }) => alarm.rule === 'heat');
    expect(taken.alarm).toMatchObject({ state: 'acknowledged', acknowledgedBy: 'Test manager' });
  });

  it('says that something about a batch or a chamber has changed', async () => {
    const tent = await openTent();
    const stream = await read(tent);
    const batch = await openBatch(tent);
    expect(await stream.next('batch')).toMatchObject({ chamberId: tent.chamberId, batchId: batch.id });
    await tent.api.post(`/batches/${batch.id}/log`, { kind: 'mist' });
    expect(await stream.next('batch')).toMatchObject({ chamberId: tent.chamberId, batchId: batch.id });
    await tent.api.patch(`/chambers/${tent.chamberId}`, { name: 'Tent one' });
    expect(await stream.next('batch')).toMatchObject({ chamberId: tent.chamberId, batchId: null });
  });

  it('says that a rule was taken out of service or returned, which no alarm need tell', async () => {
    const tent = await openTent();
    await openBatch(tent);
    const stream = await read(tent);
    for (const act of ['out-of-service', 'return-to-service']) {
      await tent.api.post(`/chambers/${tent.chamberId}/rules/dry/${act}`, { reason: 'repairs' });
      expect(await stream.next('batch'), act).toMatchObject({ chamberId: tent.chamberId });
    }
  });

  it('says nothing before it is stored: who hears of an alarm finds it', async () => {
    const tent = await openTent();
    await openBatch(tent);
    const stream = await read(tent);
    const heard = stream.next('alarm').then(({ alarm }) => tent.app.store.alarms.get(alarm.id));
    await tent.stay(28.5, MINUTE_MS);
    expect(await heard).toMatchObject({ rule: 'heat' });
  });

  it('is counted while it is read', async () => {
    const tent = await openTent();
    const readers = async () => /takewell_stream_readers (\d+)/.exec((await tent.api.text('/metrics')).body)?.[1];
    expect(await readers()).toBe('0');
    await read(tent);
    await read(tent);
    expect(await readers()).toBe('2');
  });

  it('is for those who are signed in, and cannot be asked for its head alone', async () => {
    const { app, api } = await openTestApp();
    await expect(readStream(app.url, {})).rejects.toThrow('the stream answered 401');
    const head = await fetch(`${app.url}/api/v1/stream`, { method: 'HEAD', headers: { cookie: api.cookie() } });
    expect(head.status).toBe(404);
  });
});

describe('the stream ends', () => {
  it('when the service closes, which does not wait for its readers', async () => {
    const tent = await openHotTent();
    const streams = await Promise.all([read(tent), read(tent)]);
    await tent.app.close();
    await Promise.all(streams.map(({ ended }) => ended));
  });

  it('when its person is given another role or password, or is removed', async () => {
    const { app, api } = await openTestApp();
    const crew = { name: 'Crew', role: 'crew', password: 'crew password for tests' };
    const { body } = await api.post<{ id: string }>('/people', crew);
    const streamOfCrew = async () => {
      const client = createApiClient(app.url);
      await client.post('/session', crew);
      return readStream(app.url, { cookie: client.cookie() });
    };
    const manager = await read({ app, api });
    const first = await streamOfCrew();
    await api.patch(`/people/${body.id}`, { role: 'viewer' });
    await first.ended;
    const second = await streamOfCrew();
    await api.delete(`/people/${body.id}`);
    await second.ended;
    await api.post('/chambers', { name: 'Tent 9' });
    expect(await manager.next('batch')).toMatchObject({ batchId: null });
  });

  it('when its token is withdrawn', async () => {
    const { app, api } = await openTestApp();
    const { body } = await api.post<{ id: string; token: string }>('/tokens', { name: 'lamp', scope: 'read' });
    const stream = await readStream(app.url, { authorization: `Bearer ${body.token}` });
    await stream.next('hello');
    await api.delete(`/tokens/${body.id}`);
    await stream.ended;
  });
});

describe('climate', () => {
  it('that changes often is said now and then, with its newest value', async () => {
    const tent = await openTent();
    const stream = await read(tent);
    for (let n = 0; n < 20; n += 1) {
      await tent.measure(20 + n / 10);
      tent.clock.advance(SECOND_MS);
    }
    await stream.next('climate', ({ climate }) => climate.temperature === 21.9);
    expect(stream.events.filter(({ event }) => event === 'climate').length).toBeLessThan(20);
  });
});
