// Health says whether readings are stored and judged, and if not, why; metrics are for a monitoring program on the same machine or with a token.
import { rm } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { Health } from '../../../shared/api/health.ts';
import { Problem } from '../../../shared/problem.ts';
import { SECOND_MS } from '../../../shared/units.ts';
import { createApiClient } from '../../support/api-client.ts';
import { openHotTent, openTent } from '../../support/open-tent.ts';
import { openTestApp } from '../../support/open-test-app.ts';

const readHealth = (url: string) => createApiClient(url).get<Health>('/health');

describe('health', () => {
  it('is answered to anybody: ready, with its version and nothing that blocks', async () => {
    const { app } = await openTestApp();
    const { status, body } = await readHealth(app.url);
    expect(status).toBe(200);
    expect(body).toMatchObject({ live: true, ready: true, version: expect.stringMatching(/^\d+\.\d+\.\d+/) });
    expect(body.problems.filter(({ code }) => code !== 'disk')).toEqual([]);
  });

  it('is not ready when the watch has not gone round for more than a minute', async () => {
    const tent = await openTent();
    tent.clock.advance(60 * SECOND_MS);
    expect((await readHealth(tent.app.url)).status).toBe(200);
    tent.clock.advance(1);
    const late = await readHealth(tent.app.url);
    expect(late.status).toBe(503);
    expect(late.body).toMatchObject({ live: true, ready: false });
    expect(late.body.problems).toContainEqual({
      code: 'watch',
      detail: 'The watch has not gone round for a minute.',
    });
    await tent.app.tick();
    expect((await readHealth(tent.app.url)).status).toBe(200);
  });

  it('is said in the language of who is signed in, else of the request; its codes stay', async () => {
    const tent = await openTent();
    tent.clock.advance(61 * SECOND_MS);
    await tent.api.patch('/people/me', { language: 'nl' });
    expect((await tent.api.get<Health>('/health')).body.problems).toContainEqual({
      code: 'watch',
      detail: 'De bewaking heeft al een minuut geen ronde gemaakt.',
    });
    const spanish = await createApiClient(tent.app.url, { 'accept-language': 'es' }).get<Health>('/health');
    expect(spanish.body.problems).toContainEqual({
      code: 'watch',
      detail: 'La vigilancia lleva un minuto sin dar una vuelta.',
    });
  });

  it.each([
    {
      why: 'the disk is full',
      failure: Problem.forOperator('store-full', 'The disk is full.'),
      finding: { code: 'store-full', detail: 'The disk is full.' },
    },
    {
      why: 'the store fails for a reason nobody foresaw',
      failure: new Error('cannot say'),
      finding: { code: 'store-unavailable', detail: 'The store does not answer (Error: cannot say).' },
    },
  ])('is not ready when $why, and says so', async ({ failure, finding }) => {
    const { app } = await openTestApp();
    Object.assign(app.store, { checkHealth: () => Promise.reject(failure) });
    const { status, body } = await readHealth(app.url);
    expect(status).toBe(503);
    expect(body.problems).toContainEqual(finding);
  });
});

describe('health of a service whose data folder has gone', () => {
  it('is answered, and is not ready: what it writes is gone with the process', async () => {
    const { app, folder } = await openTestApp();
    await rm(folder, { recursive: true });
    const { status, body } = await readHealth(app.url);
    expect(status).toBe(503);
    expect(body).toMatchObject({ live: true, ready: false });
    expect(body.problems).toContainEqual({
      code: 'store-unavailable',
      detail: expect.stringMatching(/^The data folder is gone \(.*ENOENT.*\)\.$/),
    });
  });
});

describe('metrics', () => {
  it('are text of the Prometheus format, every figure with its help and type', async () => {
    const tent = await openHotTent();
    const { status, headers, body } = await tent.api.text('/metrics');
    expect(status).toBe(200);
    expect(headers.get('content-type')).toBe('text/plain; version=0.0.4; charset=utf-8');
    const samples = [...body.matchAll(/^(takewell_\w+)(?:\{[^}]*\})? (\S+)$/gm)].map(([, name, value]) => [
      name,
      value,
    ]);
    expect(Object.fromEntries(samples)).toMatchObject({
      takewell_readings_admitted: '7',
      takewell_messages_waiting: '0',
      takewell_broker_up: '1',
      takewell_alarms_active: '1',
      takewell_stream_readers: '0',
      takewell_memory_bytes: expect.stringMatching(/^\d{7,}$/),
      takewell_info: '1',
    });
    for (const [name] of samples) expect(body).toContain(`# TYPE ${name} gauge\n`);
    expect(body.endsWith('\n')).toBe(true);
  });

  it('are given to this machine, and to others only with a token or signed in', async () => {
    const { app, api } = await openTestApp({ environment: { TAKEWELL_TRUST_PROXY: '127.0.0.1' } });
    const { body } = await api.post<{ token: string }>('/tokens', { name: 'prometheus', scope: 'read' });
    // As the reverse proxy hands on a request from elsewhere.
    const elsewhere = { 'x-forwarded-for': '192.0.2.7' };
    const statusFor = async (headers: Record<string, string>) =>
      (await createApiClient(app.url, headers).text('/metrics')).status;
    expect(await statusFor({})).toBe(200);
    expect(await statusFor(elsewhere)).toBe(401);
    expect(await statusFor({ ...elsewhere, authorization: `Bearer ${body.token}` })).toBe(200);
    expect(await statusFor({ ...elsewhere, cookie: api.cookie() })).toBe(200);
  });

  it('believe no forwarded address that a stranger makes up: without a proxy set, the caller is who it is', async () => {
    const { app } = await openTestApp();
    const made = createApiClient(app.url, { 'x-forwarded-for': '192.0.2.7' });
    expect((await made.text('/metrics')).status).toBe(200);
  });
});
