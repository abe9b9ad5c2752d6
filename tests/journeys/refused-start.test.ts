// The service that cannot start says why in one plain line and ends with exit 2; nothing on stdout makes anybody believe that it runs.
import { once } from 'node:events';
import { writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { openStore } from '../../server/store/open-store.ts';
import { makeTestFolder } from '../support/open-test-app.ts';
import { startService } from '../support/service-run.ts';

/** Starts the service as `npm start` does; what it says at the end. */
async function start(environment: Record<string, string>) {
  const settings = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0', ...environment };
  const { code, stdout, stderr } = await startService('server/main.ts', settings).ended;
  const lines = stderr.trimEnd().split('\n');
  const plain = lines.filter((line) => !line.startsWith('{'));
  return { code, stdout, plain, last: lines.at(-1) };
}

async function expectRefusal(environment: Record<string, string>, reason: RegExp): Promise<void> {
  const { code, stdout, plain, last } = await start(environment);
  expect({ code, stdout, plain: plain.length }).toEqual({ code: 2, stdout: '', plain: 1 });
  expect(last).toMatch(reason);
  expect(last).toBe(plain[0]);
}

async function takePort(): Promise<string> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => void server.close());
  const address = server.address();
  return String(typeof address === 'object' ? address?.port : address);
}

it('refuses a data folder that cannot be made, because a file stands there', async () => {
  const file = join(await makeTestFolder(), 'data');
  await writeFile(file, '');
  await expectRefusal(
    { TAKEWELL_DATA_DIR: file },
    /^The data folder .*\/data cannot be written: .*TAKEWELL_DATA_DIR\.$/,
  );
});

it('refuses a data folder in which nobody can write', async () => {
  await expectRefusal({ TAKEWELL_DATA_DIR: '/proc' }, /^The data folder .*(cannot be written|cannot be used now)/);
});

it('refuses a database that is none, and leaves it as it is', async () => {
  const folder = await makeTestFolder();
  await writeFile(join(folder, 'takewell.sqlite'), 'not a database, but somebody may want it back '.repeat(100));
  await expectRefusal({ TAKEWELL_DATA_DIR: folder }, /SQLITE_NOTADB/);
});

it('refuses a database that a newer Takewell has written', async () => {
  const folder = await makeTestFolder();
  const file = join(folder, 'takewell.sqlite');
  await openStore({ file, nowMs: 0 }).close();
  const db = new Database(file);
  db.exec(`INSERT INTO migrations SELECT max(number) + 1, '999-of-next-year.sql', 'hash', 0 FROM migrations`);
  db.close();
  await expectRefusal({ TAKEWELL_DATA_DIR: folder }, /written by a newer Takewell \(it has 999-of-next-year\.sql\)/);
});

it.each([
  ['TAKEWELL_HTTP_PORT', /^Port (\d+) is in use: .*TAKEWELL_HTTP_PORT\.$/],
  ['TAKEWELL_MQTT_PORT', /^Port (\d+) for MQTT is in use: .*TAKEWELL_MQTT_PORT\.$/],
])('refuses a port that another program has: %s', async (name, reason) => {
  const port = await takePort();
  await expectRefusal({ TAKEWELL_DATA_DIR: await makeTestFolder(), [name]: port }, reason);
});

it.each([
  ['a setting that is misspelt', { TAKEWELL_HTP_PORT: '8420' }, /^The setting TAKEWELL_HTP_PORT is not known/],
  ['a port that is none', { TAKEWELL_MQTT_PORT: '65536' }, /^The setting TAKEWELL_MQTT_PORT is a port number/],
  ['a port that is a word', { TAKEWELL_HTTP_PORT: 'http' }, /^The setting TAKEWELL_HTTP_PORT /],
  ['a broker of another kind', { TAKEWELL_MQTT_URL: 'http://192.0.2.7' }, /^The setting TAKEWELL_MQTT_URL /],
  ['an unknown log level', { TAKEWELL_LOG_LEVEL: 'loud' }, /^The setting TAKEWELL_LOG_LEVEL is one of/],
  ['half of a certificate', { TAKEWELL_MQTT_TLS_CERT: 'cert.pem' }, /^The setting TAKEWELL_MQTT_TLS_KEY goes together/],
  [
    'a certificate that is not there',
    { TAKEWELL_MQTT_TLS_CERT: 'nowhere.pem', TAKEWELL_MQTT_TLS_KEY: 'nowhere.key' },
    /^The setting TAKEWELL_MQTT_TLS_CERT or _KEY names a file/,
  ],
  [
    'an address of another machine',
    { TAKEWELL_MQTT_HOST: '192.0.2.7' },
    /^The setting TAKEWELL_MQTT_HOST 192\.0\.2\.7/,
  ],
])('refuses %s', async (_why, environment, reason) => {
  await expectRefusal({ TAKEWELL_DATA_DIR: await makeTestFolder(), ...(environment as object) }, reason);
});

it('starts when nothing is wrong, says so in one line on stdout, and ends well on SIGTERM', async () => {
  const folder = await makeTestFolder();
  const service = startService('server/main.ts', {
    TAKEWELL_DATA_DIR: folder,
    TAKEWELL_HTTP_PORT: '0',
    TAKEWELL_MQTT_PORT: '0',
  });
  const ready = await service.ready;
  expect(ready).toMatch(/^Takewell is ready at http:\/\/127\.0\.0\.1:\d+$/);
  service.kill('SIGTERM');
  const { code, stdout, stderr } = await service.ended;
  expect({ code, stdout }).toEqual({ code: 0, stdout: `${ready}\n` });
  for (const line of stderr.trimEnd().split('\n')) expect(() => JSON.parse(line), line).not.toThrow();
});
