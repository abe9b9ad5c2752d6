// The settings of the site: what a manager changes shows at once everywhere, and what the page does not show stays as it was.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { SiteSettings } from '../../shared/api/telling.ts';
import { openBrowser, openPage, signInOn } from '../support/browser.ts';
import { MANAGER } from '../support/open-test-app.ts';
import { CREW, openTentSite } from '../support/tent-site.ts';

const mapping: SiteSettings['mappings'][number] = {
  filter: 'greenhouse/+/air',
  node: 'level:1',
  temperature: { pointer: '/t', unit: 'degF' },
  humidity: { pointer: '/rh', unit: '%RH' },
};

async function openAt(url: string, path: string, person: typeof MANAGER): Promise<Page> {
  const page = await openPage(await openBrowser(), url);
  await page.goto(path);
  await signInOn(page, person);
  return page;
}

it('°F is chosen once and read everywhere; the mappings stay', async () => {
  const site = await openTentSite();
  const before = (await site.api.get<SiteSettings>('/settings')).body;
  await site.api.put('/settings', { ...before, mappings: [mapping] });
  const page = await openAt(site.app.url, '/settings', MANAGER);
  await page.getByLabel('Name of the site').fill('Nursery of the tests');
  await page.getByLabel('Altitude of the site in metres').fill('412');
  await page.getByLabel('Temperatures in').selectOption('°F');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await page.getByText('Settings saved').waitFor();
  expect((await site.api.get<SiteSettings>('/settings')).body).toEqual({
    ...{ siteName: 'Nursery of the tests', zone: before.zone, altitudeM: 412, temperatureUnit: '°F' },
    mappings: [mapping],
  });

  await page.getByRole('link', { name: 'Chambers' }).click();
  const row = page.getByRole('article', { name: 'Tent 1' });
  // 25.9 °C, and the plan of 20 to 28 °C.
  await row.getByText('78.6').waitFor();
  await row.getByText('plan 68–82.4').waitFor();
  await row.getByRole('link', { name: 'Tent 1' }).click();
  await page.getByRole('button', { name: 'Values as a table' }).click();
  await page.getByRole('columnheader', { name: 'Temperature °F' }).waitFor();
  await page.getByRole('columnheader', { name: 'Plan °F' }).waitFor();
});

it('a zone that does not exist is said at its field, and what was typed is kept', async () => {
  const site = await openTentSite();
  const page = await openAt(site.app.url, '/settings', MANAGER);
  const zone = page.getByLabel('Time zone');
  await zone.fill('Europe/Nowhere');
  await page.getByLabel('Name of the site').fill('Half typed');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await page.getByText('This time zone is not known.').waitFor();
  expect(await zone.getAttribute('aria-invalid')).toBe('true');
  expect(await page.getByLabel('Name of the site').inputValue()).toBe('Half typed');
  expect((await site.api.get<SiteSettings>('/settings')).body.zone).toBe('Europe/Amsterdam');

  await zone.fill('Asia/Kathmandu');
  await page.getByText('It is 15:45 there now.').waitFor();
});

it('the crew reads the settings and is offered no form', async () => {
  const site = await openTentSite();
  const page = await openAt(site.app.url, '/settings', CREW);
  await page.getByText('Only a manager can change these.').waitFor();
  expect(await page.locator('form').count()).toBe(0);
  expect(await page.getByRole('link', { name: 'Settings' }).count()).toBe(0);
});
