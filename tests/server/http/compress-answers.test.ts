// Answers are packed for whoever takes them so, and only what is read.

import { once } from 'node:events';
import { request } from 'node:http';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { acceptsGzip } from '../../../server/http/compress-answers.ts';
import { openTestApp, type TestApp } from '../../support/open-test-app.ts';

async function ask({ app, api }: TestApp, path: string, coding: string) {
  const asked = request(`${app.url}${path}`, { headers: { cookie: api.cookie(), 'accept-encoding': coding } }).end();
  const [answer] = await once(asked, 'response');
  const parts: Buffer[] = [];
  for await (const part of answer) parts.push(part);
  return { coding: answer.headers['content-encoding'], headers: answer.headers, body: Buffer.concat(parts) };
}

describe('a long answer that is read', () => {
  it('is packed for who takes gzip, says the same, and says how long it is', async () => {
    const site = await openTestApp();
    const plain = await ask(site, '/api/v1/profiles', 'identity');
    const packed = await ask(site, '/api/v1/profiles', 'gzip, deflate, br');
    expect(plain.coding).toBeUndefined();
    expect(packed.coding).toBe('gzip');
    expect(packed.headers['vary']).toBe('accept-encoding');
    expect(Number(packed.headers['content-length'])).toBe(packed.body.length);
    expect(packed.body.length * 3).toBeLessThan(plain.body.length);
    expect(gunzipSync(packed.body).toString()).toBe(plain.body.toString());
  });

  it('is left as it is when it is short, and when it answers a change', async () => {
    const site = await openTestApp();
    expect((await ask(site, '/api/v1/session', 'gzip')).coding).toBeUndefined();
    const { url } = site.app;
    const profile = (await site.api.get<{ items: { document: object }[] }>('/profiles')).body.items[0]?.document;
    const headers = { cookie: site.api.cookie(), 'content-type': 'application/json', 'accept-encoding': 'gzip' };
    const body = JSON.stringify({ id: 'another', document: profile });
    const posted = await fetch(`${url}/api/v1/profiles`, { method: 'POST', headers, body });
    expect((await posted.text()).length).toBeGreaterThan(1_400);
    expect(posted.headers.get('content-encoding')).toBeNull();
  });
});

describe('the files of the dashboard', () => {
  it('come packed as they were built', async () => {
    const site = await openTestApp();
    const page = (await ask(site, '/', 'identity')).body.toString();
    const [, script = ''] = /src="(\/assets\/[^"]+\.js)"/.exec(page) ?? [];
    const plain = await ask(site, script, 'identity');
    for (const coding of ['gzip', 'br']) {
      const packed = await ask(site, script, coding);
      expect(packed.coding).toBe(coding);
      expect(packed.body.length * 2).toBeLessThan(plain.body.length);
      expect(packed.headers['cache-control']).toContain('immutable');
    }
  });
});

describe('gzip is taken', () => {
  it.each<[string | undefined, boolean, string]>([
    ['gzip', true, 'named'],
    ['deflate, GZIP ;q=0.5, br', true, 'named among others, with a weight'],
    ['br, deflate', false, 'not named'],
    ['gzip;q=0', false, 'refused by a weight of nothing'],
    ['gzip;q=0.0', false, 'the same with a decimal'],
    ['', false, 'nothing said'],
    [undefined, false, 'no header'],
    ['x-gzip-like', false, 'another name'],
  ])('%j: %s (%s)', (header, takes) => {
    expect(acceptsGzip(header)).toBe(takes);
  });
});
