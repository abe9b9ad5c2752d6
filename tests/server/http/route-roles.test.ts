// Who may call what: the whole table, every route with every kind of caller.
import fastifyCookie from '@fastify/cookie';
import fastify from 'fastify';
import { describe, expect, it } from 'vitest';
import { guardRoutes } from '../../../server/http/actor.ts';
import type { SignIn } from '../../../server/people/sign-in.ts';
import { type ApiClient, createApiClient } from '../../support/api-client.ts';
import { openTestApp } from '../../support/open-test-app.ts';
import { type RouteRow, routeTable } from './route-table.ts';

const PASSWORD = 'a password of the tests';
const callers = ['nobody', 'viewer', 'crew', 'manager', 'token read', 'token full'] as const;
type Caller = (typeof callers)[number];
type Headers = Record<string, string>;

/** What each caller may do at most; a read token sees what a viewer sees, a full one does what a manager does. */
const rank: Record<Caller, number> = {
  nobody: 0,
  viewer: 1,
  'token read': 1,
  crew: 2,
  manager: 3,
  'token full': 3,
};
const needed: Record<RouteRow['role'], number> = { public: 0, viewer: 1, crew: 2, manager: 3 };

function expected({ role, peopleOnly }: RouteRow, caller: Caller): 'may' | 401 | 403 {
  if (rank[caller] < needed[role]) return caller === 'nobody' ? 401 : 403;
  return peopleOnly && caller.startsWith('token') ? 403 : 'may';
}

async function identify(url: string, api: ApiClient): Promise<Record<Caller, Headers>> {
  const person = async (role: string) => {
    await api.post('/people', { name: role, role, password: PASSWORD });
    const client = createApiClient(url);
    await client.post('/session', { name: role, password: PASSWORD });
    return { cookie: client.cookie() };
  };
  const token = async (scope: string) => {
    const { body } = await api.post<{ token: string }>('/tokens', { name: scope, scope });
    return { authorization: `Bearer ${body.token}` };
  };
  return {
    nobody: {},
    viewer: await person('viewer'),
    crew: await person('crew'),
    manager: { cookie: api.cookie() },
    'token read': await token('read'),
    'token full': await token('full'),
  };
}

/** The status of a call with nothing in it on ids that do not exist: only who calls decides whether it is let through. */
async function statusOf(url: string, { method, path }: RouteRow, headers: Headers): Promise<number> {
  const stop = new AbortController();
  const address = `${url}/api/v1${path.replaceAll(/\{\w+\}/g, 'none')}`;
  const body = method === 'GET' || method === 'DELETE' ? {} : { body: '{}' };
  const type: Headers = 'body' in body ? { 'content-type': 'application/json' } : {};
  const { status } = await fetch(address, { method, headers: { ...headers, ...type }, ...body, signal: stop.signal });
  // The stream would go on for ever.
  stop.abort();
  return status;
}

describe('roles', () => {
  it('every route lets through whom it should and nobody else', async () => {
    const { app, api } = await openTestApp();
    const headers = await identify(app.url, api);
    // Signing out ends the session that asks, and the tries at a password are counted: both have tests of their own.
    const apart = ['/session', '/setup', '/invitations/look', '/invitations/accept'];
    const rows = routeTable.filter(({ path }) => !apart.includes(path));
    const wrong: string[] = [];
    for (const row of rows)
      for (const caller of callers) {
        const status = await statusOf(app.url, row, headers[caller]);
        const outcome = status === 401 || status === 403 ? status : 'may';
        const right = expected(row, caller);
        if (outcome !== right) wrong.push(`${row.method} ${row.path} by ${caller}: ${outcome}, should be ${right}`);
        if (status >= 500) wrong.push(`${row.method} ${row.path} by ${caller}: ${status}`);
      }
    expect(wrong).toEqual([]);
  });

  it('the table above holds every route that there is', async () => {
    const { api } = await openTestApp();
    const { body } = await api.get<{ paths: Record<string, Record<string, object>> }>('/openapi.json');
    const served = Object.entries(body.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path.replace('/api/v1', '')}`),
    );
    expect(served.sort()).toEqual(routeTable.map(({ method, path }) => `${method} ${path}`).sort());
  });

  it('says to somebody unknown to sign in, and to somebody known what is missing', async () => {
    const { app, api } = await openTestApp();
    const headers = await identify(app.url, api);
    const refusalOf = async (caller: Caller) =>
      (await createApiClient(app.url, headers[caller]).get<{ status: number; detail: string }>('/people')).body;
    expect(await refusalOf('nobody')).toMatchObject({ status: 401, detail: 'Sign in to see this.' });
    expect(await refusalOf('crew')).toMatchObject({
      status: 403,
      detail: 'This needs the role manager; you are crew.',
    });
  });

  it('a token that was made up or withdrawn is nobody’s', async () => {
    const { app, api } = await openTestApp();
    const { body } = await api.post<{ id: string; token: string }>('/tokens', { name: 'lamp', scope: 'read' });
    const lamp = createApiClient(app.url, { authorization: `Bearer ${body.token}` });
    expect((await lamp.get('/chambers')).status).toBe(200);
    expect((await api.delete(`/tokens/${body.id}`)).status).toBe(204);
    expect((await lamp.get('/chambers')).status).toBe(401);
    const made = createApiClient(app.url, { authorization: 'Bearer made-up' });
    expect((await made.get<{ detail: string }>('/chambers')).body.detail).toBe(
      'This token is not known: make a new one.',
    );
  });
});

describe('a route that declares no role', () => {
  const nobody = { bySession: async () => null, byToken: async () => null } as unknown as SignIn;
  const guarded = async () => {
    const app = fastify();
    await app.register(fastifyCookie);
    guardRoutes(app, nobody, []);
    return app;
  };

  it('stops the start', async () => {
    const app = await guarded();
    expect(() => app.get('/api/v1/forgotten', async () => 'secret')).toThrow(
      'route GET /api/v1/forgotten declares no role',
    );
  });

  it('is a file of the dashboard when it lies outside the API, which is for everybody', async () => {
    const app = await guarded();
    app.get('/page', async () => 'a page');
    expect((await app.inject('/page')).body).toBe('a page');
    await app.close();
  });
});
