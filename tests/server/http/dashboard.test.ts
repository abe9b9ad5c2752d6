// The built dashboard as it is served: pages, files, and the headers that keep it to itself.
import { once } from 'node:events';
import { request } from 'node:http';
import { urlToHttpOptions } from 'node:url';
import { describe, expect, it } from 'vitest';
import { openTestApp } from '../../support/open-test-app.ts';

async function get(path: string, environment: Record<string, string> = {}) {
  const { app } = await openTestApp({ environment });
  const answer = await fetch(`${app.url}${path}`);
  return { status: answer.status, headers: answer.headers, text: await answer.text(), url: app.url };
}

/** Asks for a path as it is written: `fetch` would tidy it up first. */
async function statusOfRaw(url: string, path: string): Promise<number | undefined> {
  const [answer] = await once(request({ ...urlToHttpOptions(new URL(url)), path }).end(), 'response');
  answer.resume();
  return answer.statusCode;
}

describe('the page', () => {
  it.each(['/', '/sign-in', '/chambers/abc', '/set-up?code=x.y', '/alarms?state=active'])(
    'is served at %s, to somebody who has not signed in too, and asked for anew each time',
    async (path) => {
      const { status, headers, text } = await get(path);
      expect(status).toBe(200);
      expect(headers.get('content-type')).toMatch(/^text\/html/);
      expect(headers.get('cache-control')).toBe('no-cache');
      expect(text).toMatch(/^<!doctype html>/i);
    },
  );

  it('names files that are there, and that never change under their name', async () => {
    const page = await get('/');
    const files = [...page.text.matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)].flatMap(([, file]) => file ?? []);
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const answer = await fetch(`${page.url}${file}`);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    }
  });

  it.each(['/service-worker.js', '/manifest.webmanifest'])('%s is asked for anew each time', async (file) => {
    const { status, headers } = await get(file);
    expect(status).toBe(200);
    expect(headers.get('cache-control')).toBe('no-cache');
  });

  it.each([
    ['/no-such-file.js', 'a page in its place would be run as a script'],
    ['/assets/old-0000.css', 'the same for a style of an older version'],
    ['/api/nothing', 'the API is no page'],
  ])('is not served for %s: %s', async (path) => {
    const { status, headers, text } = await get(path);
    expect(status).toBe(404);
    expect(headers.get('content-type')).toBe('application/problem+json');
    expect(text).toContain('There is nothing at this address.');
  });

  it.each([
    '/../../package.json',
    '/..%2f..%2fpackage.json',
    '/assets/../../../package.json',
    '/%2e%2e/%2e%2e/package.json',
  ])('nothing outside the dashboard is served, however it is asked for: %s', async (path) => {
    const { app } = await openTestApp();
    expect(await statusOfRaw(app.url, path)).toBe(404);
  });

  it('is only read, never written to', async () => {
    const { app } = await openTestApp();
    expect((await fetch(`${app.url}/chambers/abc`, { method: 'POST' })).status).toBe(404);
  });
});

describe('its headers', () => {
  it.each(['/', '/api/v1/health', '/api/v1/nothing'])(
    'at %s let it load only what is its own, framed by nobody',
    async (path) => {
      const { headers } = await get(path);
      const policy = Object.fromEntries(
        (headers.get('content-security-policy') ?? '').split(';').map((one) => {
          const [name = '', ...sources] = one.trim().split(' ');
          return [name, sources.join(' ')];
        }),
      );
      expect(policy).toEqual({
        'default-src': "'self'",
        'img-src': "'self' data:",
        'frame-ancestors': "'none'",
        'base-uri': "'none'",
        'form-action': "'self'",
        'object-src': "'none'",
      });
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('x-frame-options')).toBe('DENY');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('x-powered-by')).toBeNull();
    },
  );

  it('ask for encryption for good only where there is some', async () => {
    expect((await get('/')).headers.get('strict-transport-security')).toBeNull();
    const secure = await get('/', { TAKEWELL_PUBLIC_URL: 'https://takewell.example' });
    expect(secure.headers.get('strict-transport-security')).toBe('max-age=15552000');
  });
});
