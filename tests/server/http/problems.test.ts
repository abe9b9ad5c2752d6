// Errors are problem details after RFC 9457: type, title, status and a detail that says what to do; never a stack, never a framework's word.
import { describe, expect, it } from 'vitest';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import { openTestApp } from '../../support/open-test-app.ts';

interface Call {
  readonly why: string;
  readonly path: string;
  readonly init?: RequestInit;
  readonly signedOut?: true;
  readonly problem: { readonly code: string; readonly status: number; readonly title: string; readonly detail: RegExp };
}

const json = { 'content-type': 'application/json' };
const post = (body: string, headers: Record<string, string> = json): RequestInit => ({ method: 'POST', body, headers });
const wrong = { code: 'bad-input', status: 400, title: 'The request is not right' };
const unknown = { code: 'not-found', status: 404, title: 'Not found' };

const calls: Call[] = [
  {
    why: 'a path that is not there',
    path: '/api/v1/nothing',
    problem: { ...unknown, detail: /^There is nothing at this address\.$/ },
  },
  {
    why: 'the same for somebody unknown: it says nothing of what there is',
    path: '/api/v1/nothing',
    signedOut: true,
    problem: { ...unknown, detail: /^There is nothing at this address\.$/ },
  },
  {
    why: 'a method that the path does not have',
    path: '/api/v1/health',
    init: { method: 'PUT', body: '{}', headers: json },
    problem: { ...unknown, detail: /^There is nothing at this address\.$/ },
  },
  {
    why: 'a path that cannot be read',
    path: '/api/v1/%E0%A4%A',
    problem: { ...wrong, detail: /is not a valid url component/ },
  },
  {
    why: 'an id that is not there',
    path: '/api/v1/chambers/none',
    problem: { ...unknown, detail: /^There is no such chamber\.$/ },
  },
  {
    why: 'no sign-in',
    path: '/api/v1/chambers',
    signedOut: true,
    problem: { code: 'not-signed-in', status: 401, title: 'Sign in first', detail: /^Sign in to see this\.$/ },
  },
  {
    why: 'something that does not fit what is there',
    path: '/api/v1/profiles',
    init: post(JSON.stringify({ id: 'tomato-common-practice', document: {} })),
    problem: { code: 'conflict', status: 409, title: 'It does not fit', detail: /has this name already/ },
  },
  {
    why: 'a body that is not JSON',
    path: '/api/v1/chambers',
    init: post('{"name":'),
    problem: { ...wrong, detail: /^The body is not JSON that can be read\.$/ },
  },
  {
    why: 'a body of another kind',
    path: '/api/v1/chambers',
    init: post('name=Tent', { 'content-type': 'application/x-www-form-urlencoded' }),
    problem: {
      code: 'wrong-content',
      status: 415,
      title: 'Wrong kind of content',
      detail: /^Send JSON with the header content-type: application\/json\.$/,
    },
  },
  {
    why: 'a body larger than a mebibyte',
    path: '/api/v1/chambers',
    init: post(JSON.stringify({ name: 'x'.repeat(1024 * 1024) })),
    problem: { code: 'too-large', status: 413, title: 'Too large', detail: /^That is too large to take in\.$/ },
  },
  {
    why: 'a profile with faults',
    path: '/api/v1/profiles',
    init: post(JSON.stringify({ id: 'mine', document: { name: 'Mine' } })),
    problem: { ...wrong, detail: /^The profile cannot be used: / },
  },
];

describe('a request that fails', () => {
  it.each(calls)('for $why is answered $problem.status $problem.code', async ({ path, init, signedOut, problem }) => {
    const { app, api } = await openTestApp();
    const headers = { ...init?.headers, ...(!signedOut && { cookie: api.cookie() }) };
    const answer = await fetch(`${app.url}${path}`, { ...init, headers });
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
    expect(answer.status).toBe(problem.status);
    const { code, ...rest } = problem;
    const body: ProblemDetails = JSON.parse(await answer.text());
    expect(body).toMatchObject({
      ...rest,
      type: `urn:takewell:problem:${code}`,
      detail: expect.stringMatching(rest.detail),
    });
    expect(Object.keys(body).filter((key) => !['type', 'title', 'status', 'detail', 'faults'].includes(key))).toEqual(
      [],
    );
  });

  it('a body of a mebibyte less its frame is taken in, and then found too long', async () => {
    const { api } = await openTestApp();
    const answer = await api.post<ProblemDetails>('/chambers', { name: 'x'.repeat(1024 * 1024 - 11) });
    expect(answer.body).toMatchObject({ status: 400, detail: 'name: at most 80 characters' });
  });
});

describe('a body that does not fit its shape', () => {
  it.each([
    { path: '/chambers', body: { name: '' }, faults: [{ where: '/name', reason: 'give it a name' }] },
    {
      path: '/batches/none/log',
      body: { kind: 'gap' },
      faults: [{ where: '/gapPercent', reason: 'say how far the tent is open, 0–100 %' }],
    },
    { path: '/batches/none/log', body: { kind: 'note' }, faults: [{ where: '/note', reason: 'write the note' }] },
    {
      path: '/batches/none/close-chamber',
      body: { closedAt: 'yesterday' },
      faults: [{ where: '/closedAt', reason: 'write a time as RFC 3339, for example 2026-03-02T07:00:00Z' }],
    },
    {
      path: '/alarms/none/shelve',
      body: { minutes: 30, reason: 'no' },
      faults: [{ where: '/reason', reason: 'say why, so that others know' }],
    },
    {
      path: '/phones',
      body: { subscription: { endpoint: 'x', keys: { p256dh: 'a', auth: 'b' } } },
      faults: [{ where: '/subscription/endpoint', reason: 'Invalid URL' }],
    },
  ])('$path with $body names each fault and its place', async ({ path, body, faults }) => {
    const { api } = await openTestApp();
    const answer = await api.post<ProblemDetails>(path, body);
    expect(answer.status).toBe(400);
    expect(answer.body.faults).toEqual(faults);
    const [fault] = faults;
    expect(answer.body.detail).toBe(`${fault?.where.slice(1).replaceAll('/', '.')}: ${fault?.reason}`);
  });

  it('with several faults names all of them', async () => {
    const { api } = await openTestApp();
    const { body } = await api.post<ProblemDetails>('/people', { name: ' ', role: 'owner', password: 'short' });
    expect(body.faults?.map(({ where }) => where)).toEqual(['/name', '/role', '/password']);
    for (const field of ['name', 'role', 'password']) expect(body.detail).toContain(`${field}: `);
  });

  it('that is missing says so of the whole', async () => {
    const { api } = await openTestApp();
    expect((await api.post<ProblemDetails>('/chambers')).body).toMatchObject({ status: 400, detail: /^body: / });
  });

  it.each([
    ['/alarms?limit=0', 'limit: '],
    ['/alarms?limit=501', 'limit: '],
    ['/alarms?limit=many', 'limit: '],
    ['/alarms?state=gone', 'state: '],
    ['/alarms?cursor=first', 'cursor: start without a cursor'],
    ['/batches?cursor=~', 'cursor: start without a cursor'],
    ['/chambers/none/climate?points=9', 'points: '],
    ['/chambers/none/climate?points=2001', 'points: '],
    ['/chambers/none/climate?from=noon', 'from: write a time as RFC 3339'],
  ])('nor does the query of %s', async (path, start) => {
    const { api } = await openTestApp();
    const { body } = await api.get<ProblemDetails>(path);
    expect(body.status).toBe(400);
    expect(body.detail.startsWith(start)).toBe(true);
  });
});

describe('a fault of the program itself', () => {
  it('is answered without a word of what it was', async () => {
    const { app, api } = await openTestApp();
    Object.assign(app.store.profiles, { list: () => Promise.reject(new Error('the secret inside')) });
    const { status, body } = await api.get<ProblemDetails>('/profiles');
    expect(status).toBe(500);
    expect(body).toEqual({
      type: 'urn:takewell:problem:internal',
      title: 'Internal error',
      status: 500,
      detail: 'Something went wrong inside Takewell; the log of the service says what.',
    });
  });
});
