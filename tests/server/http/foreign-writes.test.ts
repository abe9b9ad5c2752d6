// A page of another web site must not write with the cookie of somebody signed in here.
import { describe, expect, it } from 'vitest';
import { createApiClient } from '../../support/api-client.ts';
import { openTestApp } from '../../support/open-test-app.ts';

const PUBLIC_URL = 'https://takewell.example';

async function openSite() {
  const { app, api } = await openTestApp({ environment: { TAKEWELL_PUBLIC_URL: `${PUBLIC_URL}/` } });
  let tents = 0;
  const call = async (headers: Record<string, string>) => {
    const client = createApiClient(app.url, { ...headers, cookie: api.cookie() });
    tents += 1;
    return {
      write: (await client.post<{ detail: string }>('/chambers', { name: `Tent ${tents}` })).status,
      read: (await client.get('/chambers')).status,
    };
  };
  return { url: app.url, call };
}

describe('a write', () => {
  it.each([
    { headers: {}, write: 201, why: 'a program sends neither header' },
    { headers: { 'sec-fetch-site': 'same-origin' }, write: 201, why: 'our own page' },
    { headers: { 'sec-fetch-site': 'none' }, write: 201, why: 'typed in by a person' },
    { headers: { 'sec-fetch-site': 'cross-site' }, write: 403, why: 'another site' },
    { headers: { 'sec-fetch-site': 'same-site' }, write: 403, why: 'a neighbour under the same domain' },
    { headers: { origin: PUBLIC_URL }, write: 201, why: 'our public address' },
    { headers: { origin: 'https://evil.example' }, write: 403, why: 'another address' },
    { headers: { origin: `${PUBLIC_URL}.evil.example` }, write: 403, why: 'an address that only begins like ours' },
    { headers: { origin: 'http://takewell.example' }, write: 403, why: 'our name without its encryption' },
    { headers: { origin: 'null' }, write: 403, why: 'a page that hides where it is from' },
    {
      headers: { origin: PUBLIC_URL, 'sec-fetch-site': 'cross-site' },
      write: 403,
      why: 'one header that fits does not excuse the other',
    },
  ])('with $headers is answered $write: $why', async ({ headers, write }) => {
    const { call } = await openSite();
    expect(await call(headers as Record<string, string>)).toEqual({ write, read: 200 });
  });

  it('from the address that was asked for is our own, whatever the public address is', async () => {
    const { url, call } = await openSite();
    expect((await call({ origin: url })).write).toBe(201);
    expect((await call({ origin: url.replace('http:', 'https:') })).write).toBe(201);
    expect((await call({ origin: `${url}0` })).write).toBe(403);
  });

  it('is refused before the password is looked at', async () => {
    const { url } = await openSite();
    const answer = await createApiClient(url, { origin: 'https://evil.example' }).post<{ detail: string }>('/session', {
      name: 'Test manager',
      password: 'a password for the tests',
    });
    expect(answer.status).toBe(403);
    expect(answer.body.detail).toBe('This request came from another web site.');
    expect(answer.headers.get('set-cookie')).toBeNull();
  });
});
