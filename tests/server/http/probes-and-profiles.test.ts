// Nodes, probes, refused messages and profiles over HTTP.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readMigrations } from '../../../server/store/migrate.ts';
import { openDatabase } from '../../../server/store/open-database.ts';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import type { NodeView, ProbeView, RefusedView } from '../../../shared/api/probes.ts';
import type { ProfileVerdictView, ProfileView } from '../../../shared/api/profiles.ts';
import { utcText } from '../../../shared/units.ts';
import { createApiClient } from '../../support/api-client.ts';
import { connectNode } from '../../support/connect-node.ts';
import { openTent, TENT_MS, TENT_PROFILE, type Tent } from '../../support/open-tent.ts';
import { makeTestFolder, openTestApp } from '../../support/open-test-app.ts';

interface List<T> {
  readonly items: readonly T[];
}

async function send(tent: Tent, topic: string, text: string): Promise<void> {
  const payload = new TextEncoder().encode(text);
  await tent.app.intake.push({ topic, payload, arrivalMs: tent.clock.nowMs(), retained: false });
}

describe('probes', () => {
  it('that are heard for the first time are listed with what they said, waiting to be placed', async () => {
    const tent = await openTent();
    await tent.measure(22.5, 91, 'b');
    const { items } = (await tent.api.get<List<ProbeView>>('/probes')).body;
    expect(items[1]).toEqual({
      ...{ id: 'p2', nodeId: 'n1', address: 'b', name: 'n1 b', chamberId: null, place: null },
      ...{ silenceMinutes: 10, outOfService: false, discoveredAt: utcText(TENT_MS) },
      ...{ battery: null, hoursAbove90Rh: 0 },
      last: {
        ...{ at: utcText(TENT_MS), temperature: 22.5, humidity: 91, temperatureFlag: 1, humidityFlag: 1 },
        ...{ rawTemperature: 22.5, rawHumidity: 91 },
      },
    });
  });

  it('are placed, named and given their silence in one call', async () => {
    const { api, probeId, chamberId } = await openTent();
    const change = { name: 'Middle', place: 'film', silenceMinutes: 30, outOfService: true };
    const { status, body } = await api.patch<ProbeView>(`/probes/${probeId}`, change);
    expect(status).toBe(200);
    expect(body).toMatchObject({ ...change, chamberId });
  });

  it.each([
    [{ silenceMinutes: 0 }, 400],
    [{ silenceMinutes: 1 }, 200],
    [{ silenceMinutes: 240 }, 200],
    [{ silenceMinutes: 241 }, 400],
    [{ place: 'roof' }, 400],
    [{ name: '' }, 400],
    [{}, 200],
  ])('changed to %j is answered %i', async (change, status) => {
    const { api, probeId } = await openTent();
    expect((await api.patch(`/probes/${probeId}`, change)).status).toBe(status);
  });
});

describe('nodes', () => {
  it('are known by what they sent or said, or added before that, once each', async () => {
    const tent = await openTent();
    await send(tent, 'takewell/v1/n2/status', 'online');
    expect((await tent.api.post<NodeView>('/nodes', { id: 'n3' })).status).toBe(201);
    const { items } = (await tent.api.get<List<NodeView>>('/nodes')).body;
    expect(items.map(({ id, status, hasCredentials }) => [id, status, hasCredentials])).toEqual([
      ['n1', 'unknown', false],
      ['n2', 'online', false],
      ['n3', 'unknown', false],
    ]);
    expect((await tent.api.post<ProblemDetails>('/nodes', { id: 'n3' })).status).toBe(409);
  });

  it('tell of their battery, and the newest counts', async () => {
    const tent = await openTent();
    const battery = async () => (await tent.api.get<List<NodeView>>('/nodes')).body.items[0];
    expect(await battery()).toMatchObject({ battery: null });
    await send(tent, 'takewell/v1/n1/readings', '{"temperature": 22, "probe": "a", "battery": 63}');
    tent.clock.advance(60_000);
    await send(tent, 'takewell/v1/n1/readings', '{"temperature": 22, "probe": "a", "battery": 12}');
    await send(tent, 'takewell/v1/n1/readings', '{"temperature": 22.1, "probe": "b"}');
    const at = utcText(TENT_MS + 60_000);
    expect(await battery()).toMatchObject({ battery: { level: 12, unit: 'percent', at } });
    const { items } = (await tent.api.get<List<ProbeView>>('/probes')).body;
    expect(items.map(({ address, battery }) => [address, battery?.level])).toEqual([
      ['a', 12],
      ['b', 12],
    ]);
    await send(tent, 'takewell/v1/n1/readings', '{"temperature": 22.2, "probe": "a", "batteryVolts": 3.71}');
    expect(await battery()).toMatchObject({ battery: { level: 3.71, unit: 'volts', at } });
  });

  it('get a password of their own, a new one each time it is asked for', async () => {
    const { api } = await openTent();
    const first = await api.post<{ name: string; password: string }>('/nodes/n1/credentials');
    expect(first.status).toBe(201);
    expect(first.body).toEqual({ name: 'n1', password: expect.stringMatching(/^[\w-]{32}$/) });
    const second = await api.post<{ password: string }>('/nodes/n1/credentials');
    expect(second.body.password).not.toBe(first.body.password);
    expect((await api.post('/nodes/none/credentials')).status).toBe(404);
  });
});

describe('messages that were refused', () => {
  it('are listed newest first, with the reason and how they began', async () => {
    const tent = await openTent();
    await send(tent, 'takewell/v1/n1/readings', '{"temperature":"warm"}');
    await send(tent, 'somewhere/else', 'hello');
    const { items } = (await tent.api.get<List<RefusedView>>('/refused')).body;
    expect(items.map(({ topic, payloadStart }) => [topic, payloadStart])).toEqual([
      ['somewhere/else', 'hello'],
      ['takewell/v1/n1/readings', '{"temperature":"warm"}'],
    ]);
    expect(items.every(({ reason, at }) => reason.endsWith('.') && at === utcText(TENT_MS))).toBe(true);
  });

  it('say why in the language of whoever asks, after a restart too', async () => {
    const folder = await makeTestFolder();
    const { app } = await openTestApp({ folder });
    const node = await connectNode(app.mqttPort, 'n1');
    await node.send([{ temperature: 300.5 }, { temperature: 'warm' }]);
    await node.client.endAsync(true);
    await app.close();
    const again = await openTestApp({ folder });
    const reasons = async (language: string) => {
      const asked = createApiClient(again.app.url, { cookie: again.api.cookie(), 'accept-language': language });
      return (await asked.get<List<RefusedView>>('/refused')).body.items.map(({ reason }) => reason);
    };
    expect(await reasons('nl-BE, en;q=0.5')).toEqual([
      'De temperatuur is de tekst "warm"; stuur een getal in °C, of laat het veld weg.',
      'Een temperatuur van 300,5 °C kan niet (-60 tot 100 °C wordt aangenomen); controleer de sensor en zijn eenheid.',
    ]);
    expect((await reasons('es'))[0]).toBe('La temperatura es el texto "warm"; envíe un número en °C u omita el campo.');
    const english = 'The temperature is the text "warm"; send a number in °C, or leave it out.';
    expect((await reasons('de'))[0]).toBe(english);
    // Their own language, whatever the browser prefers.
    await again.api.patch('/people/me', { language: 'es' });
    expect((await reasons('nl'))[0]).toBe('La temperatura es el texto "warm"; envíe un número en °C u omita el campo.');
  });

  it('by an earlier version, or for a reason that this one does not know, are shown as they were kept', async () => {
    const folder = await makeTestFolder();
    const file = join(folder, 'takewell.sqlite');
    const shipped = readMigrations();
    const before = shipped.slice(
      0,
      shipped.findIndex(({ name }) => name.endsWith('-reasons-of-refusals.sql')),
    );
    const columns = 'at_ms, topic, place, payload_start, reason';
    const row = `1, 'a/b', '/temperature', x'7b', 'The temperature is the text "warm"; send a number in °C, or leave it out.'`;
    const old = openDatabase({ file, nowMs: 1, migrations: before });
    old.exec(`INSERT INTO refused (${columns}) VALUES (${row})`);
    old.close();
    const grown = openDatabase({ file, nowMs: 2 });
    grown.exec(`INSERT INTO refused (${columns}, reason_data) VALUES (${row}, '{"key":"tooSalty","parts":[]}')`);
    grown.close();
    const { app, api } = await openTestApp({ folder });
    const asked = createApiClient(app.url, { cookie: api.cookie(), 'accept-language': 'nl' });
    const { items } = (await asked.get<List<RefusedView>>('/refused')).body;
    const shown = {
      ...{ at: utcText(1), topic: 'a/b', where: '/temperature', payloadStart: '{' },
      reason: 'The temperature is the text "warm"; send a number in °C, or leave it out.',
    };
    expect(items).toEqual([
      { ...shown, id: 2 },
      { ...shown, id: 1 },
    ]);
  });
});

describe('profiles', () => {
  const standard = async () => {
    const { app, api } = await openTestApp();
    return { app, api, profile: (await api.get<ProfileView>(`/profiles/${TENT_PROFILE}`)).body };
  };

  it('come with the service, to be copied and changed', async () => {
    const { api } = await openTestApp();
    const { items } = (await api.get<List<ProfileView>>('/profiles')).body;
    expect(items.length).toBeGreaterThanOrEqual(3);
    expect(items.every(({ version, createdBy }) => version === 1 && createdBy === 'Takewell')).toBe(true);
  });

  it('of one’s own have versions; each stays as it was', async () => {
    const { api, profile } = await standard();
    const own = { ...profile.document, name: 'Ours' };
    const first = await api.post<ProfileView>('/profiles', { id: 'ours', document: own });
    expect(first.status).toBe(201);
    expect(first.body).toMatchObject({ id: 'ours', version: 1, createdBy: 'Test manager', document: own });
    const next = await api.post<ProfileView>('/profiles/ours/versions', { document: { ...own, note: 'wetter' } });
    expect(next.body).toMatchObject({ id: 'ours', version: 2, document: { note: 'wetter' } });
    const read = async (query: string) => (await api.get<ProfileView>(`/profiles/ours${query}`)).body;
    expect(await read('')).toEqual(next.body);
    expect(await read('?version=1')).toEqual(first.body);
    expect((await api.get('/profiles/ours?version=3')).status).toBe(404);
    expect((await api.get('/profiles/ours?version=0')).status).toBe(400);
  });

  it('are listed with every version, newest first, each with who made it', async () => {
    const { api, profile } = await standard();
    await api.post(`/profiles/${TENT_PROFILE}/versions`, { document: { ...profile.document, note: 'wetter' } });
    const { items } = (await api.get<List<ProfileView>>(`/profiles/${TENT_PROFILE}/history`)).body;
    expect(items.map(({ version, createdBy }) => [version, createdBy])).toEqual([
      [2, 'Test manager'],
      [1, 'Takewell'],
    ]);
    expect(items[1]).toEqual(profile);
    expect((await api.get('/profiles/none/history')).status).toBe(404);
  });

  it('from a file are checked before they are taken over, and nothing is kept of it', async () => {
    const { api, profile } = await standard();
    const good = await api.post<ProfileVerdictView>('/profiles/check', { document: profile.document });
    expect(good.body).toEqual({ document: profile.document, faults: [] });
    for (const document of [null, 7, [], 'a profile', { ...profile.document, stages: [] }]) {
      const bad = await api.post<ProfileVerdictView>('/profiles/check', { document });
      expect([bad.status, bad.body.document]).toEqual([200, null]);
      expect(bad.body.faults.length).toBeGreaterThan(0);
    }
    expect((await api.get<List<ProfileView>>('/profiles')).body.items.length).toBe(3);
  });

  it('with faults are refused, each fault with its place', async () => {
    const { api, profile } = await standard();
    const document = { ...profile.document, crop: '', endsAfterHours: -1 };
    const answer = await api.post<ProblemDetails>('/profiles', { id: 'ours', document });
    expect(answer.status).toBe(400);
    expect(answer.body.faults?.map(({ where }) => where)).toEqual(expect.arrayContaining(['/crop', '/endsAfterHours']));
    expect((await api.get('/profiles/ours')).status).toBe(404);
    const version = await api.post<ProblemDetails>(`/profiles/${TENT_PROFILE}/versions`, { document });
    expect(version.status).toBe(400);
  });

  it('have a name of their own, and versions only of what is there', async () => {
    const { api, profile } = await standard();
    const { document } = profile;
    expect((await api.post('/profiles', { id: TENT_PROFILE, document })).status).toBe(409);
    expect((await api.post('/profiles', { id: 'not an id', document })).status).toBe(400);
    expect((await api.post('/profiles/none/versions', { document })).status).toBe(404);
  });
});
