// What the crew does with wet hands on a phone: by touch, on the page of a chamber, each in one tap; and what the manager steers.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { BatchView } from '../../shared/api/batches.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, phone, signInOn } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture, watchConsole } from '../support/look-at-page.ts';
import { CREW, openTentSite } from '../support/tent-site.ts';

async function openOnTouch(url: string): Promise<Page> {
  const browser = await openBrowser();
  const context = await browser.newContext({
    ...{ baseURL: url, locale: 'en-US', viewport: phone, hasTouch: true, isMobile: true },
  });
  const page = await context.newPage();
  await page.goto('/');
  await signInOn(page, CREW);
  return page;
}

type Site = Awaited<ReturnType<typeof openTentSite>>;
const batchOf = async (site: Site) => (await site.api.get<BatchView>(`/batches/${site.batchId}`)).body;

it('logs mist two taps after opening the app, then a gap, limp, erect and a note', async () => {
  const site = await openTentSite();
  const page = await openOnTouch(site.app.url);
  const faults = watchConsole(page);
  await page.getByRole('link', { name: 'Tent 1' }).tap();
  const misted = page.getByRole('button', { name: 'Misted' });
  await misted.waitFor();
  // Within the first screenful: nobody scrolls with a mister in the other hand.
  const box = await misted.boundingBox();
  expect((box?.y ?? phone.height) + (box?.height ?? 0)).toBeLessThan(phone.height * 1.25);
  await misted.tap();
  await page.getByText(/Logged: Misted/).waitFor();
  site.clock.advance(MINUTE_MS);
  await page.getByRole('button', { name: 'Gap…' }).tap();
  await page.getByRole('button', { name: '10 %', exact: true }).tap();
  await page.getByText(/Logged: Gap set, 10 % open/).waitFor();
  site.clock.advance(MINUTE_MS);
  await page.getByRole('region', { name: 'Log what you see or do' }).getByRole('button', { name: 'Limp' }).tap();
  await page.getByRole('alert').getByText('close the gap, mist, and hold the batch').waitFor();
  site.clock.advance(MINUTE_MS);
  await page.getByRole('region', { name: 'Log what you see or do' }).getByRole('button', { name: 'Erect' }).tap();
  await page.getByText(/Logged: Plants erect/).waitFor();
  site.clock.advance(MINUTE_MS);
  await page.getByRole('button', { name: 'Note…' }).tap();
  await page.getByRole('textbox', { name: 'Note' }).fill('Two trays by the door are dry');
  await page.getByRole('button', { name: 'Log note' }).tap();
  await page.getByText('Two trays by the door are dry').waitFor();
  const { log } = await batchOf(site);
  expect(log.filter(({ person }) => person === CREW.name).map(({ kind, gapPercent }) => [kind, gapPercent])).toEqual([
    ['mist', null],
    ['gap', 10],
    ['limp', null],
    ['erect', null],
    ['note', null],
  ]);
  expect(faults).toEqual([]);
}, 60_000);

it('answers a check that is due where it is asked', async () => {
  const site = await openTentSite({ hasLooked: false });
  const page = await openOnTouch(site.app.url);
  const row = page.getByRole('article', { name: 'Tent 1' });
  await row.getByRole('button', { name: 'Yes: Do the scions stand erect?' }).tap();
  await page.getByText('Answer saved').waitFor();
  await row.getByText('Check missed').waitFor({ state: 'detached' });
  expect((await batchOf(site)).log.at(-1)).toMatchObject({ kind: 'check', person: CREW.name });
}, 60_000);

it('holds a batch with its reason, resumes it, and moves it on', async () => {
  const site = await openTentSite();
  const page = await openOnTouch(site.app.url);
  await page.getByRole('link', { name: 'Tent 1' }).tap();
  await page.getByRole('button', { name: 'Hold' }).tap();
  const form = page.getByRole('form', { name: 'Stop the batch clock' });
  await form.getByLabel('Reason').fill('Scions not ready');
  await form.getByRole('button', { name: 'Hold' }).tap();
  await page.getByText('On hold: the batch clock stands still').waitFor();
  await keepPicture(page, 'on-hold', phone);
  await expectNoSidewaysScroll(page, 'on hold');
  await expectAccessible(page, 'on hold');
  expect(await batchOf(site)).toMatchObject({ onHold: true });
  site.clock.advance(MINUTE_MS);
  await page.getByRole('button', { name: 'Resume' }).first().tap();
  await page.getByText('On hold: the batch clock stands still').waitFor({ state: 'detached' });
  site.clock.advance(MINUTE_MS);
  await page.getByRole('button', { name: 'Move on to venting' }).tap();
  await page.getByRole('button', { name: 'Move on now' }).tap();
  await page.getByText('Moved on to venting').first().waitFor();
  expect(await batchOf(site)).toMatchObject({ onHold: false, stage: 'venting' });
}, 60_000);

it('puts right what was entered of a batch, and says what stood before', async () => {
  const site = await openTentSite();
  const page = await openOnTouch(site.app.url);
  await page.getByRole('link', { name: 'Tent 1' }).tap();
  await page.getByRole('button', { name: 'Correct the batch' }).tap();
  const form = page.getByRole('form', { name: 'Correct the batch' });
  await form.getByLabel('Scion').fill('S-30');
  await form.getByLabel('Plants').fill('980');
  const { closedAt } = await batchOf(site);
  await form.getByRole('button', { name: 'Save the correction' }).tap();
  await page.getByText('Batch corrected').waitFor();
  // The field shows minutes: what is not changed in it is not cut to them.
  expect(await batchOf(site)).toMatchObject({ scion: 'S-30', plants: 980, closedAt });
  await page.getByRole('button', { name: 'Correct the batch' }).tap();
  await form.getByLabel(/^Closed at/).fill('2100-01-01T00:00');
  await form.getByRole('button', { name: 'Save the correction' }).tap();
  await form.getByRole('alert').waitFor();
  expect((await batchOf(site)).log.at(-1)).toMatchObject({ kind: 'corrected', person: CREW.name });
  expect((await batchOf(site)).closedAt).toBe(closedAt);
}, 60_000);

it('shelves an alarm with a time and a reason, and takes it off the shelf', async () => {
  const site = await openTentSite();
  await site.ramp(26, 29.5);
  await site.stay(29.5, 12);
  const page = await openOnTouch(site.app.url);
  await page.getByRole('link', { name: /^Alarms/ }).tap();
  const alarm = page.getByRole('listitem').filter({ hasText: /hot: /i });
  await alarm.getByText('nobody has it').waitFor();
  await alarm.getByRole('button', { name: 'Shelve' }).tap();
  const form = page.getByRole('form', { name: 'Shelve this alarm' });
  await form.getByLabel('Minutes').fill('45');
  await form.getByRole('button', { name: 'Shelve' }).tap();
  await form.getByLabel('Reason, so that others know').fill('Shade cloth is on its way');
  await form.getByRole('button', { name: 'Shelve' }).tap();
  await page
    .getByText(/shelved until .*: Shade cloth is on its way/)
    .first()
    .waitFor();
  await keepPicture(page, 'shelved', phone);
  await expectAccessible(page, 'a shelved alarm');
  expect(await site.heat()).toMatchObject({ state: 'shelved', shelvedReason: 'Shade cloth is on its way' });
  await page.getByRole('button', { name: 'Take off the shelf' }).first().tap();
  await page.getByText('nobody has it').first().waitFor();
  expect((await site.heat())?.state).toBe('unacknowledged');
}, 60_000);
