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
  // Said where it was answered, and then by the alarm that stands for it: once, not twice.
  await page.getByRole('status').getByText('Do first: Close the tent, mist lightly').waitFor();
  const advice = page.getByRole('main').getByText('Close the tent, mist lightly');
  await expect.poll(() => advice.count()).toBe(1);
  await row.getByText('Check missed').waitFor({ state: 'detached' });
  expect(new URL(page.url()).pathname).toBe('/');
  const { body } = await site.api.get<{ items: { status: string; answer: string | null }[] }>(
    `/batches/${site.batchId}/checks?limit=500`,
  );
  expect(body.items.filter(({ answer }) => answer === 'no')).toHaveLength(1);
  await keepPicture(page, 'first-aid', phone);
  await expectNoSidewaysScroll(page, 'first-aid');
  await expectAccessible(page, 'first-aid');

  await row.getByRole('link', { name: 'Tent 1' }).click();
  await page.getByRole('heading', { level: 1, name: 'Tent 1' }).waitFor();
  await expect.poll(() => advice.count()).toBe(1);
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

  // The head speaks of the heat: what the "no" brings stands under it, until somebody closes it.
  await row.getByRole('link', { name: 'Tent 1' }).click();
  await page.getByRole('button', { name: 'No: Do the scions stand erect?' }).click();
  const aid = page.getByRole('alert').filter({ hasText: 'Do first: Close the tent, mist lightly' });
  await aid.getByRole('button', { name: 'Close' }).click();
  await aid.waitFor({ state: 'detached' });
});
