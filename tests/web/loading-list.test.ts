// The list to go through while the tent is being filled: shown as one list, answered one by one or the rest at once, and logged.
import { expect, it } from 'vitest';
import type { CheckView } from '../../shared/api/batches.ts';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture } from '../support/look-at-page.ts';
import { openTent, TENT_PROFILE } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';

it('is gone through in the tent: a no where something is not right, then the rest at once', async () => {
  const tent = await openTent();
  const wanted = { chamberId: tent.chamberId, profileId: TENT_PROFILE, code: 'T-1', plants: 1000 };
  const { body: batch } = await tent.api.post<{ id: string }>('/batches', wanted);
  const page = await openPage(await openBrowser(), tent.app.url, phone);
  await page.goto(`/chambers/${tent.chamberId}`);
  await signInOn(page, MANAGER);
  const checks = page.getByRole('region', { name: 'Checks' });
  await checks.getByText('6 checks go together').waitFor();
  await checks.getByRole('button', { name: 'Yes to all 6' }).waitFor();
  expect(await page.getByText('The strip could not be loaded').count()).toBe(0);
  for (const about of [
    /at 21.*80.*90/,
    /film and the floor.*damp/,
    /new blade/,
    /hands and tools/,
    /tobacco/,
    /direct sun/,
  ])
    await checks.getByText(about).waitFor();
  await keepPicture(page, 'loading-list', phone);
  await expectNoSidewaysScroll(page, 'loading-list');
  await expectAccessible(page, 'loading-list');

  // By keys: the answered check goes, and the focus with it to the next one, not back to the top of the page.
  await checks.getByRole('button', { name: /^No: Are the film and the floor/ }).press('Enter');
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
  await expect.poll(focused).toMatch(/^Yes: Is a new blade/);
  await checks.getByRole('button', { name: 'Yes to the other 5' }).click();
  await checks.getByText('No check is due.').waitFor();
  await expect.poll(() => page.locator('main :focus').count()).toBe(1);
  const { items } = (await tent.api.get<{ items: CheckView[] }>(`/batches/${batch.id}/checks`)).body;
  const loading = items.filter(({ answer }) => answer !== null);
  expect(loading.map(({ answer }) => answer).sort()).toEqual(['no', 'yes', 'yes', 'yes', 'yes', 'yes']);
  const log = await tent.app.store.batches.log(batch.id);
  expect(log.filter(({ kind }) => kind === 'check')).toHaveLength(6);
  expect(log.filter(({ kind }) => kind === 'check').every(({ person }) => person === MANAGER.name)).toBe(true);
}, 60_000);
