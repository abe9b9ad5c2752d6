// Without the service: acts are refused clearly and what was typed stays; a page opened then shows what was last known, with its age; and a
// new version takes the place of the old one without mixing the two.
import { cpSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { request as ask, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it, onTestFinished } from 'vitest';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { expectAccessible, keepPicture } from '../support/look-at-page.ts';
import { MANAGER, makeTestFolder, openTestApp } from '../support/open-test-app.ts';
import { CREW, openTentSite } from '../support/tent-site.ts';

const dist = join(import.meta.dirname, '../../web/dist');

const isServed = (page: Page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => true));

it('refuses an act in plain words and keeps what was typed, and sends it when the service is back', async () => {
  const site = await openTentSite();
  const page = await openPage(await openBrowser(), site.app.url, phone);
  await page.goto('/');
  await signInOn(page, CREW);
  await page.getByRole('link', { name: 'Tent 1' }).click();
  await page.getByRole('button', { name: 'Note…' }).click();
  await page.getByRole('textbox', { name: 'Note' }).fill('Door left open');
  await site.app.close();
  await page.getByRole('status').filter({ hasText: 'No connection' }).waitFor();
  await page.getByRole('button', { name: 'Misted' }).click();
  await page.getByText('That did not work. The service cannot be reached.').waitFor();
  await page.getByRole('button', { name: 'Log note' }).click();
  await page.getByRole('alert').getByText('what you typed is kept').waitFor();
  expect(await page.getByRole('textbox', { name: 'Note' }).inputValue()).toBe('Door left open');
  await keepPicture(page, 'refused-offline', phone);
  await expectAccessible(page, 'an act refused offline');

  const { port } = new URL(site.app.url);
  const { api } = await openTestApp({
    folder: site.folder,
    clock: site.clock,
    environment: { TAKEWELL_HTTP_PORT: port },
  });
  await page.getByRole('status').filter({ hasText: 'No connection' }).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Log note' }).click();
  await page.getByText(/Logged: Note/).waitFor();
  const { body } = await api.get<{ log: { kind: string; note: string }[] }>(`/batches/${site.batchId}`);
  // What was refused was not done behind anybody's back.
  expect(body.log.filter(({ kind }) => kind === 'mist' || kind === 'note').map(({ note }) => note)).toEqual([
    'Door left open',
  ]);
}, 90_000);

/** The languages whose words this device keeps. */
async function languagesKept(page: Page): Promise<string[]> {
  const urls = await page.evaluate(async () => {
    const shells = (await caches.keys()).filter((name) => name.startsWith('takewell-shell'));
    const requests = await Promise.all(shells.map(async (name) => (await caches.open(name)).keys()));
    return requests.flat().map(({ url }) => url);
  });
  return urls.flatMap((url) => /\/((?:late-)?(?:english|dutch|spanish))-/.exec(url)?.[1] ?? []).sort();
}

async function readIn(page: Page, language: 'en' | 'nl', heading: string): Promise<void> {
  await page.evaluate(async (wanted) => {
    const headers = { 'content-type': 'application/json' };
    await fetch('/api/v1/people/me', { method: 'PATCH', headers, body: JSON.stringify({ language: wanted }) });
  }, language);
  // It loads itself anew once it hears of the language: not waited for until loaded.
  await page.reload({ waitUntil: 'commit' });
  await page.getByRole('heading', { level: 1, name: heading }).waitFor();
}

it('opens without the service on what was last known, greyed, with its age, in a language that was read on the device', async () => {
  const site = await openTentSite();
  const page = await openPage(await openBrowser(), site.app.url, phone);
  await page.goto('/');
  await signInOn(page, CREW);
  await page.getByRole('article', { name: 'Tent 1' }).getByText('25.9').waitFor();
  expect(await isServed(page)).toBe(true);
  const english = ['english', 'late-english'];
  expect(await languagesKept(page)).toEqual(english);
  await readIn(page, 'nl', 'Tenten');
  await expect.poll(() => languagesKept(page)).toEqual(['dutch', 'english', 'late-dutch', 'late-english']);
  await readIn(page, 'en', 'Chambers');
  // Once more, so that the worker keeps what the page asks for.
  await page.reload();
  await page.getByRole('article', { name: 'Tent 1' }).getByText('25.9').waitFor();
  await site.app.close();
  await page.reload();
  const figures = page.getByRole('article', { name: 'Tent 1' }).locator('.figures');
  await figures.getByText('25.9').waitFor();
  await page.getByRole('status').filter({ hasText: 'What you see is from' }).waitFor();
  expect(
    await figures
      .locator('.number')
      .first()
      .evaluate((number) => getComputedStyle(number).fontStyle),
  ).toBe('italic');
  await keepPicture(page, 'offline-shell', phone);
  await expectAccessible(page, 'the offline shell');
  // Chosen without a connection, a language that nobody read here cannot be had: the page opens all the same.
  await page.evaluate(() => localStorage.setItem('takewell-language', 'es'));
  await page.reload();
  await figures.getByText('25.9').waitFor();
}, 90_000);

/** The service's API behind a front that gives out one built page or another, as before and after an update. */
async function openFront(url: string, folder: () => string): Promise<string> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://front').pathname;
    if (path.startsWith('/api/')) {
      const inner = ask(url + request.url, { method: request.method, headers: request.headers }, (answer) => {
        response.writeHead(answer.statusCode ?? 502, answer.headers);
        answer.pipe(response);
      });
      inner.on('error', () => response.destroy());
      request.pipe(inner);
      response.on('close', () => inner.destroy());
      return;
    }
    const isFile = /\.\w+$/.test(path);
    const types = { js: 'text/javascript', css: 'text/css', html: 'text/html' } as const;
    const file = join(folder(), isFile ? path : 'index.html');
    const type = types[file.split('.').at(-1) as keyof typeof types] ?? 'application/octet-stream';
    try {
      const content = readFileSync(file);
      response.writeHead(200, { 'content-type': type, 'cache-control': 'no-cache' }).end(content);
    } catch {
      // Files of another version are not there any more.
      response.writeHead(404).end();
    }
  });
  server.listen(0, '127.0.0.1');
  await new Promise((resolve) => server.once('listening', resolve));
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

/** The built page under other names, as another build has them: what changes in one script changes the name of each that asks for it. */
async function makeNextVersion(): Promise<string> {
  const folder = await makeTestFolder();
  cpSync(dist, folder, { recursive: true });
  const scripts = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'));
  const renamed = scripts.map((name) => [name, name.replace('-', '-next-')] as const);
  for (const [old, next] of renamed) renameSync(join(folder, 'assets', old), join(folder, 'assets', next));
  for (const name of ['index.html', 'service-worker.js', ...renamed.map(([, next]) => join('assets', next))]) {
    const text = readFileSync(join(folder, name), 'utf8').replace(/takewell-shell/, 'takewell-shell-next');
    writeFileSync(
      join(folder, name),
      renamed.reduce((all, [old, next]) => all.replaceAll(old, next), text),
    );
  }
  return folder;
}

it('a new version is told of on an open page, taken with the next page, and is whole without the service', async () => {
  const { app } = await openTestApp();
  let folder = dist;
  const url = await openFront(app.url, () => folder);
  const page = await openPage(await openBrowser(), url, phone);
  const script = () => page.evaluate(() => document.querySelector('script')?.getAttribute('src') ?? '');
  await page.goto('/');
  await signInOn(page, MANAGER);
  expect(await isServed(page)).toBe(true);
  expect(await script()).not.toContain('main-next-');
  folder = await makeNextVersion();
  // A network that comes back is one of the occasions to look.
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await page.getByText('There is a newer version of Takewell.').waitFor();
  await keepPicture(page, 'newer-version', phone);
  await expectAccessible(page, 'a newer version');
  await page.getByRole('link', { name: 'Alarms' }).click();
  await page.getByRole('heading', { level: 1, name: 'Alarms' }).waitFor();
  expect(await script()).toContain('main-next-');
  // Its worker has everything and has taken over. Asked again and again from here: a wait inside the page takes a promise for a yes.
  const hasTakenOver = () =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      const isSettled =
        registration?.active?.state === 'activated' && !registration.installing && !registration.waiting;
      return isSettled && (await caches.keys()).some((name) => name.startsWith('takewell-shell-next-'));
    });
  await expect.poll(hasTakenOver, { timeout: 30_000 }).toBe(true);
  await page.context().setOffline(true);
  await page.reload();
  expect(await script()).toContain('main-next-');
  await page.getByRole('banner').getByRole('navigation').waitFor();
}, 90_000);
