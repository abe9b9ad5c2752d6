// A check that was missed is told on the overview, can be answered there, and a "no" brings its advice to the same place.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture } from '../support/look-at-page.ts';
import { CREW, openTentSite } from '../support/tent-site.ts';

async function openOverview(site: Awaited<ReturnType<typeof openTentSite>>): Promise<Page> {
  const page = await openPage(await openBrowser(), site.app.url, phone);
  await page.goto('/');
  await signInOn(page, CREW);
  return page;
}

it('is told by word, time and shape, and a "no" says there what to do first', async () => {
  const site = await openTentSite({ hasLooked: false });
  const page = await openOverview(site);
  const row = page.getByRole('article', { name: 'Tent 1' });
  // Due a day after the tent was closed, six hours ago.
  await row.getByText('Check missed: Do the scions stand erect? (due 06:00)').waitFor();
  expect(await row.locator('.shape-overdue').count()).toBe(1);

  await row.getByRole('button', { name: 'No: Do the scions stand erect?' }).click();
  const advice = row.getByRole('alert');
  await advice.getByText('Do first: Close the tent, mist lightly').waitFor();
  await row.getByText('Check missed').waitFor({ state: 'detached' });
  expect(new URL(page.url()).pathname).toBe('/');
  const { body } = await site.api.get<{ items: { status: string; answer: string | null }[] }>(
    `/batches/${site.batchId}/checks?limit=500`,
  );
  expect(body.items.filter(({ answer }) => answer === 'no')).toHaveLength(1);
  await keepPicture(page, 'first-aid', phone);
  await expectNoSidewaysScroll(page, 'first-aid');
  await expectAccessible(page, 'first-aid');

  // It goes along to the page of the chamber, and stands until somebody closes it.
  await row.getByRole('link', { name: 'Tent 1' }).click();
  await page.getByRole('heading', { level: 1, name: 'Tent 1' }).waitFor();
  await page.getByRole('alert').getByRole('button', { name: 'Close' }).click();
  await advice.waitFor({ state: 'detached' });
});

it('stands beside an alarm, which goes before it', async () => {
  const site = await openTentSite({ hasLooked: false });
  await site.ramp(26, 29.5);
  await site.stay(29.5, 12);
  const chamber: ChamberView = await site.chamber();
  expect(chamber.alarms.length).toBeGreaterThan(0);
  const page = await openOverview(site);
  const row = page.getByRole('article', { name: 'Tent 1' });
  await row.locator('.next .shape-overdue').waitFor();
  const said = await row.locator('.next').textContent();
  expect(said).toContain('Check missed');
  expect(said).toContain('due 06:00');
  expect(await row.locator('.sentence').textContent()).toMatch(/hot: /i);
});
