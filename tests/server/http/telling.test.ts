// Phones of the signed-in person and the settings of the site over HTTP.
import { describe, expect, it, onTestFinished } from 'vitest';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import type { ReachView } from '../../../shared/api/reach.ts';
import type { DeliveryResult, SiteSettings } from '../../../shared/api/telling.ts';
import { createApiClient } from '../../support/api-client.ts';
import { makeTestFolder, openTestApp } from '../../support/open-test-app.ts';
import { openPushEndpoint } from '../../support/push-endpoint.ts';

interface Phones {
  readonly items: readonly { readonly id: string; readonly name: string; readonly lastResult: string | null }[];
  readonly lost: readonly { readonly reason: string }[];
  readonly pushKey: string;
}

async function openPhones() {
  const push = await openPushEndpoint();
  onTestFinished(push.close);
  const { app, api } = await openTestApp();
  const subscribe = () => {
    const { endpoint, keys } = push.subscribe();
    return { endpoint, keys };
  };
  const crew = createApiClient(app.url);
  const account = { name: 'Crew', role: 'crew', password: 'crew password for tests' };
  await api.post('/people', account);
  await crew.post('/session', account);
  return { app, api, crew, push, subscribe };
}

const phonesOf = async (api: ReturnType<typeof createApiClient>) => (await api.get<Phones>('/phones')).body;

describe('phones', () => {
  it('belong to the person who brought them, and are seen by nobody else', async () => {
    const { api, crew, subscribe } = await openPhones();
    const { status, body } = await crew.post<{ id: string }>('/phones', { name: 'Red', subscription: subscribe() });
    expect(status).toBe(201);
    expect((await phonesOf(crew)).items).toMatchObject([{ id: body.id, name: 'Red', lastResult: null }]);
    expect((await phonesOf(api)).items).toEqual([]);
    expect((await api.delete(`/phones/${body.id}`)).status).toBe(404);
    expect((await api.post(`/phones/${body.id}/test`)).status).toBe(404);
    expect((await crew.delete(`/phones/${body.id}`)).status).toBe(204);
    expect((await phonesOf(crew)).items).toEqual([]);
  });

  it('are listed with the key that a browser subscribes with, the same for everybody', async () => {
    const { api, crew } = await openPhones();
    const { pushKey } = await phonesOf(api);
    expect(Buffer.from(pushKey, 'base64url')).toHaveLength(65);
    expect((await phonesOf(crew)).pushKey).toBe(pushKey);
  });

  it('handed on to somebody else are that person’s from then on', async () => {
    const { api, crew, subscribe } = await openPhones();
    const subscription = subscribe();
    await crew.post('/phones', { subscription });
    await api.post('/phones', { name: 'Of the manager now', subscription });
    expect((await phonesOf(crew)).items).toEqual([]);
    expect((await phonesOf(api)).items).toMatchObject([{ name: 'Of the manager now' }]);
  });

  it('are tried out with one call, and say what became of it', async () => {
    const { crew, push, subscribe } = await openPhones();
    const { body } = await crew.post<{ id: string }>('/phones', { subscription: subscribe() });
    const tried = await crew.post<{ delivered: boolean }>(`/phones/${body.id}/test`);
    expect(tried.body.delivered).toBe(true);
    expect(push.received).toHaveLength(1);
    expect((await phonesOf(crew)).items[0]?.lastResult).toContain('201');
  });

  it('say what became of a test in the language of whoever asks, also when they read it in another one later', async () => {
    const { crew, push, subscribe } = await openPhones();
    const { body } = await crew.post<{ id: string }>('/phones', { subscription: subscribe() });
    push.answerWith({ status: 503 });
    await crew.patch('/people/me', { language: 'nl' });
    const tried = await crew.post<DeliveryResult>(`/phones/${body.id}/test`);
    expect(tried.body).toMatchObject({ delivered: false, reason: 'De pushdienst heeft een storing (503).' });
    await crew.patch('/people/me', { language: 'es' });
    expect((await phonesOf(crew)).items).toMatchObject([{ lastResult: 'el servicio push tiene problemas (503)' }]);
    expect((await crew.get<ReachView>('/people/me/reach')).body.ways).toMatchObject([
      { works: false, lastResult: 'el servicio push tiene problemas (503)' },
    ]);
  });

  it('that were dropped say why in the language of their person', async () => {
    const { crew, push, subscribe } = await openPhones();
    const { body } = await crew.post<{ id: string }>('/phones', { subscription: subscribe() });
    push.answerWith({ status: 410 });
    await crew.post(`/phones/${body.id}/test`);
    await crew.patch('/people/me', { language: 'nl' });
    expect((await phonesOf(crew)).lost).toMatchObject([
      { reason: 'deze telefoon neemt geen meldingen meer aan (410): voeg hem op de telefoon zelf opnieuw toe' },
    ]);
  });

  it('go with the account of their person', async () => {
    const { app, api, crew, subscribe } = await openPhones();
    await crew.post('/phones', { subscription: subscribe() });
    const people = await api.get<{ items: { id: string; name: string }[] }>('/people');
    await api.delete(`/people/${people.body.items.find(({ name }) => name === 'Crew')?.id}`);
    expect(await app.store.phones.all()).toEqual([]);
  });

  it('need a session: a token has no phone', async () => {
    const { app, api, subscribe } = await openPhones();
    const { body } = await api.post<{ token: string }>('/tokens', { name: 'lamp', scope: 'full' });
    const lamp = createApiClient(app.url, { authorization: `Bearer ${body.token}` });
    const answer = await lamp.post<ProblemDetails>('/phones', { subscription: subscribe() });
    expect(answer.body).toMatchObject({ status: 403, detail: 'A token is no person: sign in to do this.' });
  });
});

describe('settings of the site', () => {
  const site: SiteSettings = {
    siteName: 'Nursery of the tests',
    zone: 'America/St_Johns',
    altitudeM: 120,
    temperatureUnit: '°F',
    mappings: [{ filter: 'greenhouse/+/air', node: 'level:1', temperature: { pointer: '/t', unit: 'degF' } }],
  };

  it('count at once and after a restart, and are seen by everybody who is signed in', async () => {
    const folder = await makeTestFolder();
    const { app, api } = await openTestApp({ folder });
    expect((await api.put('/settings', site)).body).toEqual(site);
    expect((await api.get('/session')).body).toMatchObject({ siteName: site.siteName, zone: site.zone });
    await app.close();
    const again = await openTestApp({ folder });
    expect((await again.api.get('/settings')).body).toEqual(site);
  });

  it('begin with a time zone that is one', async () => {
    const { api } = await openTestApp();
    const { body } = await api.get<SiteSettings>('/settings');
    expect((await api.put('/settings', body)).status).toBe(200);
  });

  it.each([
    [{ zone: 'Mars/Olympus' }, 'The time zone Mars/Olympus is not known: write it as in Europe/Amsterdam.'],
    [{ altitudeM: 9000 }, 'altitudeM: '],
    [{ temperatureUnit: 'K' }, 'temperatureUnit: '],
    [{ siteName: '' }, 'siteName: give it a name'],
    [{ mappings: [{ filter: 'a', node: 'n' }] }, 'mappings.0.temperature: say where the temperature stands'],
  ])('with %j are refused and stay as they were', async (change, start) => {
    const { api } = await openTestApp();
    await api.put('/settings', site);
    const answer = await api.put<ProblemDetails>('/settings', { ...site, ...change });
    expect(answer.status).toBe(400);
    expect(answer.body.detail.startsWith(start)).toBe(true);
    expect((await api.get('/settings')).body).toEqual(site);
  });
});
