// How the service starts to listen: with encryption where it is asked for, and with one line that names what to change where it cannot.
import { once } from 'node:events';
import { writeFile } from 'node:fs/promises';
import { request } from 'node:https';
import { join } from 'node:path';
import pino from 'pino';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openApp } from '../../../server/app.ts';
import { systemClock } from '../../../server/clock.ts';
import { readSettings } from '../../../server/settings.ts';
import { makeCertificate } from '../../support/make-certificate.ts';
import { makeTestFolder, openTestApp, TEST_SETUP_CODE } from '../../support/open-test-app.ts';

async function writeTls(files: { readonly cert?: string; readonly key?: string }): Promise<Record<string, string>> {
  const folder = await makeTestFolder();
  for (const [name, text] of Object.entries(files)) await writeFile(join(folder, `${name}.pem`), text);
  return { TAKEWELL_TLS_CERT: join(folder, 'cert.pem'), TAKEWELL_TLS_KEY: join(folder, 'key.pem') };
}

/** Opens the service by itself: the client of the other tests speaks plain HTTP. */
async function openSecure(environment: Record<string, string>) {
  const ports = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0' };
  const folder = { TAKEWELL_DATA_DIR: await makeTestFolder(), TAKEWELL_SETUP_CODE: TEST_SETUP_CODE };
  const settings = readSettings({ ...ports, ...folder, ...environment });
  const app = await openApp({ settings, clock: systemClock, log: pino({ level: 'silent' }), roundMs: 0 });
  onTestFinished(() => app.close());
  return app;
}

describe('with a certificate and its key', () => {
  it('the service speaks https, and its cookies go over nothing else', async () => {
    const { cert, key } = makeCertificate();
    const app = await openSecure(await writeTls({ cert, key }));
    expect(app.url).toMatch(/^https:\/\/127\.0\.0\.1:\d+$/);
    expect(app.setupUrl).toMatch(/^https:\/\//);
    const call = request(`${app.url}/api/v1/setup`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      ca: cert,
      checkServerIdentity: () => undefined,
      agent: false,
    });
    call.end(JSON.stringify({ code: TEST_SETUP_CODE, name: 'Ann', password: 'a password for the tests' }));
    const [answer] = await once(call, 'response');
    answer.resume();
    expect(answer.statusCode).toBe(201);
    expect(answer.headers['set-cookie'][0]).toMatch(/; Secure/);
    expect(answer.headers['strict-transport-security']).toBe('max-age=15552000');
  });

  it.each([
    { why: 'no certificate', cert: 'not a certificate', key: makeCertificate().key },
    { why: 'no key', cert: makeCertificate().cert, key: '' },
    { why: 'the key of another certificate', cert: makeCertificate().cert, key: makeCertificate().key },
  ])('it does not start when one is $why, and says so in one line', async ({ cert, key }) => {
    const starting = openSecure(await writeTls({ cert, key }));
    await expect(starting).rejects.toMatchObject({
      code: 'bad-setting',
      message: 'The settings TAKEWELL_TLS_CERT and TAKEWELL_TLS_KEY must name a PEM certificate and its own PEM key.',
    });
  });

  it.each([
    { name: 'TAKEWELL_TLS_CERT', files: { key: '' } },
    { name: 'TAKEWELL_TLS_KEY', files: { cert: '' } },
  ])('it does not start when $name names a file that is not there', async ({ name, files }) => {
    await expect(openSecure(await writeTls(files))).rejects.toMatchObject({
      code: 'bad-setting',
      message: expect.stringMatching(new RegExp(`^The setting ${name} names a file that cannot be read: `)),
    });
  });
});

describe('an address that cannot be listened on', () => {
  it('is named by its port when that is taken', async () => {
    const { app } = await openTestApp();
    const { port } = new URL(app.url);
    await expect(openTestApp({ environment: { TAKEWELL_HTTP_PORT: port } })).rejects.toMatchObject({
      code: 'port-in-use',
      message: `Port ${port} is in use: stop the other program, or set TAKEWELL_HTTP_PORT.`,
    });
  });

  it('is named by its setting when it is not of this machine', async () => {
    // 192.0.2.0/24 is kept for examples (RFC 5737): no machine has it.
    await expect(openTestApp({ environment: { TAKEWELL_HTTP_HOST: '192.0.2.1' } })).rejects.toMatchObject({
      code: 'bad-setting',
      message: expect.stringMatching(/^The setting TAKEWELL_HTTP_HOST 192\.0\.2\.1 with port 0 cannot be listened on/),
    });
  });
});
