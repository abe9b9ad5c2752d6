// The overview follows the service by itself: a reading appears without a reload, a lost service is said to be lost, and it catches up.
import mqtt from 'mqtt';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { utcText } from '../../shared/units.ts';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { keepPicture } from '../support/look-at-page.ts';
import { openTestApp } from '../support/open-test-app.ts';
import { CREW, openTentSite, STEP_MS } from '../support/tent-site.ts';

/** Leaves a mark that a reload would wipe out. */
async function markPage(page: Page): Promise<void> {
  await page.evaluate(() => document.documentElement.setAttribute('data-marked', ''));
}

async function isMarked(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.hasAttribute('data-marked'));
}

it('shows a reading as soon as it is published, without a reload', async () => {
  const site = await openTentSite();
  const page = await openPage(await openBrowser(), site.app.url);
  await page.goto('/');
  await signInOn(page, CREW);
  const row = page.getByRole('article', { name: 'Tent 1' });
  await row.getByText('25.9').waitFor();
  await markPage(page);
  await site.stay(26.5, 1);
  // The median of the two probes.
  await row.getByText('26.4').waitFor();
  expect(await isMarked(page)).toBe(true);
});

it('says that the service is lost and how old what it shows is, and catches up by itself', async () => {
  const site = await openTentSite();
  const page = await openPage(await openBrowser(), site.app.url, phone);
  await page.goto('/');
  await signInOn(page, CREW);
  await page.getByRole('article', { name: 'Tent 1' }).getByText('25.9').waitFor();
  await markPage(page);

  await site.app.close();
  const banner = page.getByRole('status').filter({ hasText: 'No connection' });
  await banner.waitFor();
  expect(await banner.textContent()).toMatch(/What you see is from .*12:00.*, less than a minute old/);
  await page.getByText(/no connection, \d+ s old/).waitFor();
  await keepPicture(page, 'lost', phone);

  site.clock.advance(STEP_MS);
  const { port } = new URL(site.app.url);
  const { app } = await openTestApp({
    folder: site.folder,
    clock: site.clock,
    environment: { TAKEWELL_HTTP_PORT: port },
  });
  await banner.waitFor({ state: 'detached' });
  const node = await mqtt.connectAsync(`mqtt://127.0.0.1:${app.mqttPort}`);
  const reading = { probe: 'canopy-1', time: utcText(site.clock.nowMs()), temperature: 27.4, humidity: 95 };
  await node.publishAsync('takewell/v1/tent-node/readings', JSON.stringify(reading), { qos: 1 });
  await node.endAsync();
  await page.getByRole('article', { name: 'Tent 1' }).getByText('26.6').waitFor();
  expect(await isMarked(page)).toBe(true);
});

it('asks for the list of probes on the page that shows it, and on no other', async () => {
  const site = await openTentSite();
  const page = await openPage(await openBrowser(), site.app.url);
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  const probesAsked = () => asked.filter((path) => path === '/api/v1/probes').length;
  await page.goto('/');
  await signInOn(page, CREW);
  await page.getByRole('article', { name: 'Tent 1' }).getByText('25.9').waitFor();
  await site.stay(26.5, 2);
  await page.getByRole('article', { name: 'Tent 1' }).getByText('26.4').waitFor();
  expect(probesAsked()).toBe(0);
  await page.getByRole('link', { name: 'Sensors' }).click();
  await page.getByRole('heading', { level: 3, name: 'Tent 1' }).waitFor();
  expect(probesAsked()).toBeGreaterThan(0);
});

it('opens another connection when nothing was heard for a minute, as after a sleep, and catches up', async () => {
  const site = await openTentSite();
  const page = await openPage(await openBrowser(), site.app.url);
  await page.clock.install();
  const streams: string[] = [];
  page.on('request', (request) => {
    if (new URL(request.url()).pathname === '/api/v1/stream') streams.push(request.url());
  });
  await page.goto('/');
  await signInOn(page, CREW);
  await page.getByRole('article', { name: 'Tent 1' }).getByText('25.9').waitFor();
  const before = streams.length;
  await markPage(page);
  // The page's clock leaps, the service says nothing meanwhile: the browser still believes in its connection.
  await page.clock.fastForward('01:10');
  await expect.poll(() => streams.length, { timeout: 10_000 }).toBeGreaterThan(before);
  await page.clock.resume();
  await site.stay(26.5, 1);
  await page.getByRole('article', { name: 'Tent 1' }).getByText('26.4').waitFor();
  await page.getByRole('status').filter({ hasText: 'No connection' }).waitFor({ state: 'detached' });
  expect(await isMarked(page)).toBe(true);
});
