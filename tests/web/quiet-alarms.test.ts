// Work in the tent, rules out of service and how often alarms come, as people meet them: in a real browser on a phone.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import {
  comeToRest,
  expectAccessible,
  expectNoSidewaysScroll,
  keepPicture,
  watchConsole,
} from '../support/look-at-page.ts';
import { openHealingSite } from '../support/open-healing-site.ts';
import { MANAGER } from '../support/open-test-app.ts';

const NOW_MS = Date.parse('2026-03-04T12:00:00Z');

async function look(page: Page, name: string): Promise<void> {
  await comeToRest(page);
  await keepPicture(page, name, phone);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}

async function openSite() {
  const site = await openHealingSite({ nowMs: NOW_MS });
  const page = await openPage(await openBrowser(), site.app.url, phone);
  const faults = watchConsole(page);
  await page.goto('/');
  await signInOn(page, MANAGER);
  return { site, page, faults };
}

it('work in the tent is logged in one tap, said on both pages, and said to be done', async () => {
  const { site, page, faults } = await openSite();
  await page.goto(`/chambers/${site.chamberId}`);
  await page.getByRole('button', { name: 'Working in it…' }).click();
  await look(page, 'working-choice');
  await page.getByRole('button', { name: '20 min' }).click();
  const said = page.getByText(/works in the tent until 12:20\. .*quiet until 12:30; heat still tells/);
  await said.waitFor();
  await look(page, 'working');
  await page.goto('/');
  await said.waitFor();
  await look(page, 'working-overview');
  site.clock.advance(5 * MINUTE_MS);
  await page.goto('/');
  await page.getByRole('button', { name: 'Work done, tent closed: Tent 1' }).click();
  await page.getByText(/The air settles after work by .*quiet until 12:15/).waitFor();
  await page.getByRole('button', { name: /^Work done/ }).waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
}, 60_000);

it('a rule is taken out of service with a reason, said on the overview, and returned', async () => {
  const { site, page, faults } = await openSite();
  await page.goto(`/chambers/${site.chamberId}`);
  await page.getByRole('button', { name: 'Take a rule out of service' }).click();
  await page.getByLabel('Rule', { exact: true }).selectOption('Too dry');
  await page.getByLabel('Reason, so that others know').fill('The mister is being repaired');
  await page.getByRole('button', { name: 'Take out of service', exact: true }).click();
  await page.getByRole('heading', { name: 'Rules out of service' }).waitFor();
  await page.getByText('The mister is being repaired').waitFor();
  await look(page, 'out-of-service');
  await page.goto('/');
  await page.getByText('No alarm here for: too dry.').waitFor();
  await page.goto(`/chambers/${site.chamberId}`);
  await page.getByRole('button', { name: 'Return to service: Too dry' }).click();
  await page.getByRole('heading', { name: 'Rules out of service' }).waitFor({ state: 'detached' });
  expect((await site.api.get<{ outOfService: unknown[] }>(`/chambers/${site.chamberId}`)).body.outOfService).toEqual(
    [],
  );
  expect(faults).toEqual([]);
}, 60_000);

it('the alarms page holds the last 30 days against the targets', async () => {
  const { page, faults } = await openSite();
  await page.goto('/alarms');
  const section = page.getByRole('region', { name: 'How often' });
  await section.getByRole('rowheader', { name: 'Alarms a day' }).waitFor();
  await section.getByText('144 or fewer, 288 at most').waitFor();
  await look(page, 'how-often');
  expect(faults).toEqual([]);
}, 60_000);
