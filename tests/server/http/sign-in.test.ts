// First set-up, sign-in, sessions and passwords: what a stranger can find out and do, which is nothing.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Session } from '../../../shared/api/session.ts';
import { DAY_MS } from '../../../shared/units.ts';
import { createApiClient } from '../../support/api-client.ts';
import { MANAGER, makeTestFolder, openTestApp, TEST_SETUP_CODE } from '../../support/open-test-app.ts';
import { createTestClock } from '../../support/test-clock.ts';

interface Refusal {
  readonly detail: string;
}
const CREW = { name: 'Crew', role: 'crew', password: 'crew password for tests' };
const DAY_ZERO = Date.UTC(2026, 2, 1);

/** The service as it is after its very first start: nobody has an account. */
async function openUnset() {
  const { app, folder, api } = await openTestApp();
  await app.store.people.remove((await app.store.people.list())[0]?.id ?? '');
  return { app, folder, signedOut: api };
}

describe('first set-up', () => {
  it('is asked for until there is a manager', async () => {
    const { app, signedOut } = await openUnset();
    expect((await signedOut.get<Session>('/session')).body).toMatchObject({ person: null, needsSetup: true });
    const client = createApiClient(app.url);
    const made = await client.post<Session>('/setup', { code: TEST_SETUP_CODE, ...MANAGER });
    expect(made.status).toBe(201);
    expect(made.body).toMatchObject({ person: { name: MANAGER.name, role: 'manager' }, needsSetup: false });
    expect((await client.get<Session>('/session')).body.person?.role).toBe('manager');
    expect((await createApiClient(app.url).get<Session>('/session')).body).toMatchObject({
      person: null,
      needsSetup: false,
    });
  });

  it('works once, also for somebody who has the code', async () => {
    const { app } = await openTestApp();
    const again = { code: TEST_SETUP_CODE, name: 'Second', password: 'another password' };
    const answer = await createApiClient(app.url).post<Refusal>('/setup', again);
    expect(answer.status).toBe(409);
    expect(answer.body.detail).toContain('The first manager exists already');
    expect(answer.headers.get('set-cookie')).toBeNull();
    expect(await app.store.people.list()).toHaveLength(1);
  });

  it('works for one of two who try at the same moment', async () => {
    const { app } = await openUnset();
    const tries = ['Ann', 'Bea'].map((name) =>
      createApiClient(app.url).post('/setup', { code: TEST_SETUP_CODE, name, password: MANAGER.password }),
    );
    expect((await Promise.all(tries)).map(({ status }) => status).sort()).toEqual([201, 409]);
    expect(await app.store.people.list()).toHaveLength(1);
  });

  it('needs the code that the service expects', async () => {
    const { app } = await openUnset();
    const answer = await createApiClient(app.url).post<Refusal>('/setup', { code: 'a guess', ...MANAGER });
    expect(answer.status).toBe(403);
    expect(answer.body.detail).toContain('The set-up code is wrong');
    expect(await app.store.people.list()).toEqual([]);
  });

  it.each([
    ['123456789', 400],
    ['1234567890', 201],
  ])('a password of %s is answered %i', async (password, status) => {
    const { app } = await openUnset();
    const answer = await createApiClient(app.url).post('/setup', { code: TEST_SETUP_CODE, name: 'Ann', password });
    expect(answer.status).toBe(status);
  });

  it('is offered at start in an address that holds the code, and no more once there is a manager', async () => {
    const folder = await makeTestFolder();
    const { app } = await openTestApp({ folder });
    expect(app.setupUrl).toBe(`${app.url}/set-up?code=${TEST_SETUP_CODE}`);
    await app.close();
    expect((await openTestApp({ folder })).app.setupUrl).toBeNull();
  });
});

describe('signing in', () => {
  it('takes the name in any case of its letters, and gives a session', async () => {
    const { app } = await openTestApp();
    const client = createApiClient(app.url);
    const answer = await client.post<Session>('/session', { name: 'TEST MANAGER', password: MANAGER.password });
    expect(answer.status).toBe(201);
    expect((await client.get('/people')).status).toBe(200);
  });

  it.each([
    { why: 'a wrong password', name: MANAGER.name, password: 'another password' },
    { why: 'a name nobody has', name: 'Nobody', password: MANAGER.password },
    { why: 'no password at all', name: MANAGER.name, password: '' },
  ])('is refused for $why, with the same words: who has an account is not told', async ({ name, password }) => {
    const { app } = await openTestApp();
    const answer = await createApiClient(app.url).post<Refusal>('/session', { name, password });
    expect(answer.status).toBe(401);
    expect(answer.body.detail).toBe('Name or password is wrong.');
    expect(answer.headers.get('set-cookie')).toBeNull();
  });

  it('is refused after ten tries in a minute, right or wrong, and says how long to wait', async () => {
    const { app } = await openTestApp();
    const client = createApiClient(app.url);
    const statuses: number[] = [];
    for (let n = 0; n < 10; n += 1)
      statuses.push((await client.post('/session', { name: 'Nobody', password: 'x' })).status);
    expect(new Set(statuses)).toEqual(new Set([401]));
    const refused = await client.post<Refusal>('/session', MANAGER);
    expect(refused.body).toEqual({
      type: 'urn:takewell:problem:too-many',
      title: 'Too many tries',
      status: 429,
      detail: 'Too many tries: wait a minute.',
    });
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(0);
    expect((await client.get('/health')).status).toBe(200);
  });
});

describe('the session', () => {
  it.each([
    { url: undefined, secure: false, why: 'plain HTTP on the local network' },
    { url: 'http://192.0.2.7:8420', secure: false, why: 'a public address without encryption' },
    { url: 'https://takewell.example', secure: true, why: 'a public address with encryption' },
  ])('is a cookie that no script and no other site gets; secure: $secure for $why', async ({ url, secure }) => {
    const { app } = await openTestApp(url === undefined ? {} : { environment: { TAKEWELL_PUBLIC_URL: url } });
    const { headers } = await createApiClient(app.url).post('/session', MANAGER);
    const [pair, ...flags] = (headers.get('set-cookie') ?? '').split('; ');
    expect(pair).toMatch(/^takewell_session=[A-Za-z0-9_-]{32}$/);
    const ninetyDays = `Max-Age=${(90 * DAY_MS) / 1000}`;
    expect(flags.sort()).toEqual(
      [ninetyDays, 'Path=/', 'HttpOnly', ...(secure ? ['Secure'] : []), 'SameSite=Lax'].sort(),
    );
  });

  it('ends with signing out, on the server too: the old cookie opens nothing', async () => {
    const { app, api } = await openTestApp();
    const stolen = createApiClient(app.url, { cookie: api.cookie() });
    expect((await stolen.get('/people')).status).toBe(200);
    const out = await api.delete('/session');
    expect(out.status).toBe(204);
    expect(out.headers.get('set-cookie')).toMatch(/^takewell_session=;.*Expires=Thu, 01 Jan 1970/);
    expect((await stolen.get('/people')).status).toBe(401);
    expect((await api.delete('/session')).status).toBe(204);
  });

  it('ends after ninety days', async () => {
    const clock = createTestClock(DAY_ZERO);
    const { api } = await openTestApp({ clock });
    clock.set(DAY_ZERO + 90 * DAY_MS - 1);
    expect((await api.get('/people')).status).toBe(200);
    clock.set(DAY_ZERO + 90 * DAY_MS);
    expect((await api.get('/people')).status).toBe(401);
  });

  it.each([
    { why: 'a new password', change: { password: 'a new password' } },
    { why: 'a smaller role', change: { role: 'viewer' } },
  ])('ends everywhere with $why', async ({ change }) => {
    const { app, api } = await openTestApp();
    const { body } = await api.post<{ id: string }>('/people', CREW);
    const client = createApiClient(app.url);
    await client.post('/session', CREW);
    expect((await client.get('/chambers')).status).toBe(200);
    expect((await api.patch(`/people/${body.id}`, change)).status).toBe(200);
    expect((await client.get('/chambers')).status).toBe(401);
  });

  it('ends with the account', async () => {
    const { app, api } = await openTestApp();
    const { body } = await api.post<{ id: string }>('/people', CREW);
    const client = createApiClient(app.url);
    await client.post('/session', CREW);
    expect((await api.delete(`/people/${body.id}`)).status).toBe(204);
    expect((await client.get<Session>('/session')).body.person).toBeNull();
    expect((await client.post('/session', CREW)).status).toBe(401);
  });
});

describe('people', () => {
  it('are never sent with their password or its hash', async () => {
    const { api } = await openTestApp();
    const made = await api.post<object>('/people', CREW);
    expect(Object.keys(made.body).sort()).toEqual([
      'createdAt',
      'email',
      'id',
      'language',
      'name',
      'phoneNumber',
      'quietFrom',
      'quietTo',
      'role',
      'temperatureUnit',
    ]);
    expect(JSON.stringify((await api.get('/people')).body)).not.toMatch(/argon2|password/i);
  });

  it('have a name of their own', async () => {
    const { api } = await openTestApp();
    await api.post('/people', CREW);
    const answer = await api.post<Refusal>('/people', { ...CREW, name: 'CREW' });
    expect(answer.status).toBe(409);
    expect(answer.body.detail).toContain('Somebody has this name already');
  });

  it('there is always a manager among them', async () => {
    const { app, api } = await openTestApp();
    const [last] = await app.store.people.list();
    for (const act of [
      api.delete<Refusal>(`/people/${last?.id}`),
      api.patch<Refusal>(`/people/${last?.id}`, { role: 'crew' }),
    ]) {
      const answer = await act;
      expect(answer.status).toBe(409);
      expect(answer.body.detail).toContain('This is the last manager');
    }
    await api.post('/people', { ...CREW, role: 'manager' });
    expect((await api.patch(`/people/${last?.id}`, { role: 'crew' })).status).toBe(200);
  });

  it('that are not there cannot be changed or removed', async () => {
    const { api } = await openTestApp();
    expect((await api.patch('/people/none', { role: 'crew' })).status).toBe(404);
    expect((await api.delete('/people/none')).status).toBe(404);
    expect((await api.delete('/tokens/none')).status).toBe(404);
  });
});

describe('what is kept of secrets', () => {
  it('is an argon2id hash of each password, and hashes of sessions, tokens and node passwords', async () => {
    const { app, api, folder } = await openTestApp();
    await api.post('/people', CREW);
    const token = await api.post<{ token: string }>('/tokens', { name: 'lamp', scope: 'full' });
    await api.post('/nodes', { id: 'n1' });
    const node = await api.post<{ password: string }>('/nodes/n1/credentials');
    for (const { passwordHash } of await app.store.people.list())
      expect(passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    const session = api.cookie().replace('takewell_session=', '');
    const secrets = [MANAGER.password, CREW.password, session, token.body.token, node.body.password];
    expect(secrets.every((secret) => secret.length >= 10)).toBe(true);
    const stored = readdirSync(folder).map((name) => readFileSync(join(folder, name)));
    expect(stored.some((bytes) => bytes.includes('$argon2id$'))).toBe(true);
    for (const secret of secrets) expect(stored.filter((bytes) => bytes.includes(secret))).toEqual([]);
  });

  it('is shown once: a token and a node’s password are in no later answer', async () => {
    const { api } = await openTestApp();
    const { body } = await api.post<{ token: string }>('/tokens', { name: 'lamp', scope: 'read' });
    const listed = await api.text('/tokens');
    expect(listed.body).toContain('lamp');
    expect(listed.body).not.toContain(body.token);
    await api.post('/nodes', { id: 'n1' });
    const node = await api.post<{ name: string; password: string }>('/nodes/n1/credentials');
    expect(node.body.name).toBe('n1');
    const nodes = await api.get<{ items: object[] }>('/nodes');
    expect(nodes.body.items).toMatchObject([{ id: 'n1', hasCredentials: true }]);
    expect(JSON.stringify(nodes.body)).not.toContain(node.body.password);
  });
});
