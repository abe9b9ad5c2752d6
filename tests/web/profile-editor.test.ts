// A plan is edited as a manager does it: by mouse, by keyboard alone, by touch; in a real browser, on a phone, a tablet and the wall screen.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { ProfileView } from '../../shared/api/profiles.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, tablet, wallScreen } from '../support/browser.ts';
import { look, watchConsole } from '../support/look-at-page.ts';
import { MANAGER, makeTestFolder, openTestApp } from '../support/open-test-app.ts';

const TOMATO = 'tomato-common-practice';

async function openSite(screen: Screen) {
  const { app, api } = await openTestApp();
  const page = await openPage(await openBrowser(), app.url, screen);
  const faults = watchConsole(page);
  await page.goto('/profiles');
  await signInOn(page, MANAGER);
  return { api, page, faults, screen };
}

const limit = (page: Page, ...groups: string[]): Locator =>
  groups.reduce<Locator>((inside, name) => inside.getByRole('group', { name, exact: true }), page.getByRole('main'));

/** Drags the middle of a handle by so many pixels, as a hand does: in several moves. */
async function drag(page: Page, handle: Locator, dx: number, dy: number): Promise<void> {
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (box === null) throw new Error('the handle is not on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 });
  await page.mouse.move(x + dx, y + dy, { steps: 4 });
  await page.mouse.up();
}

/** Fails unless strip and Save are in the window with the field, which neither of them covers. */
async function expectBesideStrip(page: Page, field: Locator): Promise<void> {
  const boxOf = async (one: Locator) => {
    const box = await one.boundingBox();
    if (box === null) throw new Error('it is not on the page');
    return box;
  };
  const strip = await boxOf(page.getByRole('region', { name: 'Plan as a strip' }));
  const own = await boxOf(field);
  const save = await boxOf(page.getByRole('button', { name: /^Save as/ }));
  expect(strip.y).toBeGreaterThanOrEqual(0);
  expect(own.y).toBeGreaterThanOrEqual(strip.y + strip.height);
  expect(save.y).toBeGreaterThanOrEqual(own.y + own.height);
  expect(save.y + save.height).toBeLessThanOrEqual(page.viewportSize()?.height ?? 0);
}

describe('a profile', () => {
  it('is copied, written for pepper with the mouse, and saved, on the wall screen', async () => {
    const { api, page, faults, screen } = await openSite(wallScreen);
    await look(page, 'profiles-acts', screen);
    await page.getByRole('link', { name: 'Copy as a new profile: Tomato, common practice' }).click();
    await page.getByRole('heading', { level: 1, name: 'Copy of Tomato, common practice' }).waitFor();
    await page.getByLabel('Name', { exact: true }).fill('Pepper, ours');
    await page.getByLabel('Crop', { exact: true }).fill('Pepper');
    await look(page, 'editor-whole', screen);
    const lowest = limit(page, 'Hardening', 'Temperature', 'High').getByLabel('At (°C)');
    await lowest.click();
    await lowest.fill('27.5');
    await expectBesideStrip(page, lowest);
    // The strip follows a number …
    const venting = page.getByRole('slider', { name: 'Venting begins' });
    expect(await venting.getAttribute('aria-valuenow')).toBe('96');
    await limit(page, 'Venting').getByLabel('Hours after closing', { exact: true }).fill('120');
    expect(await venting.getAttribute('aria-valuetext')).toBe('120 h after closing, healing day 6');
    // … and the number follows the strip.
    await drag(page, venting, -200, 0);
    await expect
      .poll(async () => limit(page, 'Venting').getByLabel('Hours after closing', { exact: true }).inputValue())
      .not.toBe('120');
    const hours = Number(await limit(page, 'Venting').getByLabel('Hours after closing', { exact: true }).inputValue());
    expect(hours).toBeGreaterThan(72);
    expect(hours).toBeLessThan(120);
    await page.getByRole('button', { name: 'Closed', exact: true }).click();
    const heat = page.getByRole('slider', { name: 'Closed, temperature high', exact: true });
    await drag(page, heat, 0, -5);
    const dragged = Number(await limit(page, 'Closed', 'Temperature', 'High').getByLabel('At (°C)').inputValue());
    expect(dragged).toBeGreaterThan(28);
    await look(page, 'editor-stage', screen);
    // An impossible plan says why, where it is impossible, at once.
    await limit(page, 'Closed', 'Temperature', 'Low').getByLabel('At (°C)').fill('40');
    await limit(page, 'Closed', 'Temperature', 'Low')
      .getByText(/^Low \(40\) is above high/)
      .waitFor();
    const save = page.getByRole('button', { name: 'Save as a new profile' });
    expect(await save.getAttribute('aria-disabled')).toBe('true');
    await look(page, 'editor-impossible', screen);
    await limit(page, 'Closed', 'Temperature', 'Low').getByLabel('At (°C)').fill('21');
    await page.getByText('The plan can be used.').waitFor();
    await save.click();
    await page.getByRole('heading', { level: 1, name: 'Pepper, ours', exact: true }).waitFor();
    await look(page, 'profile-new', screen);
    const stored = (await api.get<ProfileView>('/profiles/pepper-ours')).body;
    expect(stored).toMatchObject({ version: 1, createdBy: MANAGER.name, document: { crop: 'Pepper' } });
    expect(stored.document.stages[2]?.afterHours).toBe(hours);
    expect(stored.document.stages[1]?.temperature.high).toMatchObject({ shape: 'constant', value: dragged });
    expect(stored.document.stages[3]?.temperature.high).toMatchObject({ shape: 'constant', value: 27.5 });
    expect(faults).toEqual([]);
  }, 90_000);

  it('is changed by keyboard alone into a new version that tells what changed, on a tablet', async () => {
    const { api, page, faults, screen } = await openSite(tablet);
    const chamberId = (await api.post<{ id: string }>('/chambers', { name: 'Tent 1' })).body.id;
    await api.post('/probes', { nodeId: 'n1', address: 'a', chamberId, place: 'canopy' });
    await api.post('/batches', { chamberId, profileId: TOMATO, code: 'B-17', plants: 10 });
    await page.goto(`/profiles/${TOMATO}/edit`);
    await page.getByText('B-17, version 1').waitFor();
    const press = async (...keys: string[]) => {
      for (const key of keys) await page.keyboard.press(key);
    };
    await page.getByRole('button', { name: 'Venting', exact: true }).focus();
    await press('Enter');
    await page.getByRole('slider', { name: 'Venting begins' }).focus();
    await press('ArrowRight', 'PageUp', 'ArrowLeft', 'ArrowLeft');
    await expect.poll(() => page.getByLabel('Hours after closing', { exact: true }).inputValue()).toBe('101');
    await page.getByRole('slider', { name: 'Venting, humidity low, at its end' }).focus();
    await press('ArrowDown', 'ArrowDown');
    const low = limit(page, 'Venting', 'Humidity', 'Low');
    await low.getByText('4 steps from 90 to house level −10 (else 53)').waitFor();
    const fallback = low.getByLabel('To: if house air is not known (%RH)');
    expect(await fallback.isVisible()).toBe(false);
    await low.locator('summary').focus();
    await press('Enter');
    await fallback.waitFor();
    expect(await fallback.inputValue()).toBe('53');
    await page.getByLabel('Steps of the opening').focus();
    // What is folded away opens by itself where something in it is at fault.
    const high = limit(page, 'Venting', 'Humidity', 'High').getByLabel('Steps', { exact: true });
    expect(await high.isVisible()).toBe(false);
    await press('Control+A', 'Delete');
    await high.waitFor();
    await page.getByText('3 things stand in the way:').waitFor();
    await press('6');
    await expect.poll(() => low.getByLabel('Steps', { exact: true }).inputValue()).toBe('6');
    await low.getByText('6 steps from 90 to house level −10 (else 53)').waitFor();
    await look(page, 'editor-venting', screen);
    await page.getByRole('button', { name: 'Save as version 2' }).focus();
    await press('Enter');
    await page.getByRole('heading', { name: 'What changed' }).waitFor();
    await page
      .getByText('Venting begins: 96 h after closing, not before 07:00 → 101 h after closing, not before 07:00')
      .waitFor();
    await page
      .getByText(/^Venting, humidity low: 90 → house level .*in 4 steps → 90 → house level .*in 6 steps$/)
      .waitFor();
    // The batch that runs keeps the version it began with.
    const old = page.getByRole('listitem').filter({ hasText: 'Version 1, by Takewell' });
    await old.getByRole('link', { name: 'B-17' }).waitFor();
    await look(page, 'profile-versions', screen);
    await page.getByLabel('To', { exact: true }).selectOption('1');
    await page.getByText('Nothing: these two say the same.').waitFor();
    expect((await api.get<ProfileView>(`/profiles/${TOMATO}`)).body.version).toBe(2);
    expect(faults).toEqual([]);
  }, 90_000);

  it('is changed with a finger on a phone; what is typed stays when the service cannot be reached', async () => {
    const { app, api } = await openTestApp();
    const browser = await openBrowser();
    const context = await browser.newContext({ baseURL: app.url, locale: 'en-US', viewport: phone, hasTouch: true });
    const page = await context.newPage();
    const faults = watchConsole(page);
    await page.goto(`/profiles/${TOMATO}/edit`);
    await signInOn(page, MANAGER);
    await page.getByRole('button', { name: 'Hardening', exact: true }).tap();
    const handle = page.getByRole('slider', { name: 'Hardening begins' });
    const box = await handle.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    const before = Number(await handle.getAttribute('aria-valuenow'));
    await touchDrag(page, handle, 60);
    await expect.poll(async () => Number(await handle.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
    await look(page, 'editor-stage', phone);
    await page.getByRole('button', { name: 'Whole plan' }).tap();
    await page.getByLabel('Note', { exact: true }).fill('Later into the sun.');
    await look(page, 'editor-whole', phone);
    const warm = limit(page, 'Closed', 'Temperature', 'Low').getByLabel('At (°C)');
    await warm.tap();
    await warm.fill('20.5');
    await expectBesideStrip(page, warm);
    await page.getByRole('button', { name: 'Add a check' }).tap();
    const faulty = page.getByText('2 things stand in the way:');
    await faulty.waitFor();
    await look(page, 'editor-impossible', phone);
    // From another view the list of what is at fault leads to the field.
    await page.getByRole('button', { name: 'Closed', exact: true }).tap();
    await faulty.tap();
    await page.getByRole('button', { name: 'Go to it: Check 14' }).first().tap();
    const question = page.getByLabel('Question that “yes” answers well').last();
    await expect.poll(() => question.evaluate((field) => field === document.activeElement)).toBe(true);
    await faulty.tap();
    await expectBesideStrip(page, question);
    await page.getByLabel('Question that “yes” answers well').last().fill('Are the labels on?');
    await page.getByLabel('What to do first when the answer is no').last().fill('Label the trays.');
    await page.getByText('The plan can be used.').waitFor();
    await page.route('**/api/v1/profiles/*/versions', (route) => route.abort());
    await page.getByRole('button', { name: 'Save as version 2' }).tap();
    await page.getByRole('alert').getByText('The service cannot be reached').waitFor();
    expect(await page.getByLabel('Note', { exact: true }).inputValue()).toBe('Later into the sun.');
    await page.unroute('**/api/v1/profiles/*/versions');
    await page.getByRole('button', { name: 'Save as version 2' }).tap();
    await page.getByText('New check: Are the labels on?').waitFor();
    await look(page, 'profile-versions', phone);
    const stored = (await api.get<ProfileView>(`/profiles/${TOMATO}`)).body;
    expect(stored.document.note).toBe('Later into the sun.');
    expect(faults.filter((fault) => !fault.includes('ERR_FAILED'))).toEqual([]);
  }, 90_000);

  it('goes to a file and comes back from one; a file with faults says each of them', async () => {
    const { api, page, faults, screen } = await openSite(phone);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file: Tomato, common practice' }).click(),
    ]);
    const folder = await makeTestFolder();
    const file = join(folder, download.suggestedFilename());
    await download.saveAs(file);
    const saved: unknown = JSON.parse(readFileSync(file, 'utf8'));
    const { document } = (await api.get<ProfileView>(`/profiles/${TOMATO}`)).body;
    expect(saved).toEqual(document);
    const bad = join(folder, 'bad.json');
    writeFileSync(bad, JSON.stringify({ ...document, endsAfterHours: 10 }));
    await page.getByLabel('Open a profile from a file').setInputFiles(bad);
    await page
      .getByRole('alert')
      .getByText(/endsAfterHours: must be later than the last stage/)
      .waitFor();
    await look(page, 'profile-file-refused', screen);
    writeFileSync(bad, 'no JSON');
    await page.getByLabel('Open a profile from a file').setInputFiles(bad);
    await page.getByRole('alert').getByText('This file is not JSON.').waitFor();
    const melon = join(folder, 'melon.json');
    writeFileSync(melon, JSON.stringify({ ...document, name: 'Melon', crop: 'Melon' }));
    await page.getByLabel('Open a profile from a file').setInputFiles(melon);
    await page.getByRole('heading', { level: 1, name: 'Melon, from a file' }).waitFor();
    await page.getByRole('button', { name: 'Save as a new profile' }).click();
    await page.getByRole('heading', { level: 1, name: 'Melon', exact: true }).waitFor();
    expect((await api.get<ProfileView>('/profiles/melon')).body.document.crop).toBe('Melon');
    expect(faults).toEqual([]);
  }, 90_000);
});

/** Drags with one finger, through the browser's own touch input. */
async function touchDrag(page: Page, handle: Locator, dx: number): Promise<void> {
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (box === null) throw new Error('the handle is not on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: x + at, y }] });
  await touch('touchStart', 0);
  for (let step = 1; step <= 6; step++) await touch('touchMove', (dx * step) / 6);
  await touch('touchEnd', dx);
}
