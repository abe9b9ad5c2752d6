// The next opening on the page of a chamber, and batches compared, as people meet them: in a real browser on a phone.
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Batch } from '../../shared/healing/batch.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, wallScreen } from '../support/browser.ts';
import {
  comeToRest,
  expectAccessible,
  expectNoSidewaysScroll,
  keepPicture,
  watchConsole,
} from '../support/look-at-page.ts';
import { openHealingSite } from '../support/open-healing-site.ts';
import { MANAGER } from '../support/open-test-app.ts';
import { storedReading } from '../support/open-test-store.ts';
import { moveFingers } from '../support/touch.ts';
import { openAfterSteps } from '../support/venting-site.ts';

async function look(page: Page, name: string, screen: Screen = phone): Promise<void> {
  await comeToRest(page);
  await keepPicture(page, name, screen);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}

describe('the next step of the opening', () => {
  it('is proposed with its reason, logged in one tap, and limp scions are answered', async () => {
    const site = await openAfterSteps();
    const gapPercent = (await site.venting()).proposal?.gapPercent;
    const page = await openPage(await openBrowser(), site.app.url, phone);
    const faults = watchConsole(page);
    await page.goto('/');
    await signInOn(page, MANAGER);
    await page.goto(`/chambers/${site.chamberId}`);
    const section = page.getByRole('region', { name: 'Next step of the opening' });
    await section.getByText(`Open to ${gapPercent} %: it should settle at`).waitFor();
    await section.getByText('What this rests on').click();
    await section.getByRole('rowheader', { name: '42 %' }).waitFor();
    await page.getByText('Exposure by stage and day').click();
    await page.getByRole('rowheader', { name: 'venting' }).waitFor();
    await look(page, 'next-opening');
    site.clock.advance(MINUTE_MS);
    await section.getByRole('button', { name: `Opened to ${gapPercent} %` }).click();
    await section.getByText('Do the scions stand erect?').waitFor();
    expect((await site.venting()).gapPercent).toBe(gapPercent);
    site.clock.advance(MINUTE_MS);
    await section.getByRole('button', { name: 'Limp' }).click();
    await section.getByText('The scions were reported limp: close the gap to 42 %, mist, hold').waitFor();
    await look(page, 'next-opening-limp');
    site.clock.advance(MINUTE_MS);
    await section.getByRole('button', { name: 'Closed to 42 %' }).click();
    await section.getByRole('button', { name: 'Closed to 42 %' }).waitFor({ state: 'detached' });
    await section.getByRole('button', { name: 'Misted' }).click();
    await section.getByRole('button', { name: 'Hold the batch' }).click();
    await section.getByText('Closed, misted and on hold.').waitFor();
    expect(await site.venting()).toMatchObject({ gapPercent: 42, why: 'limp', limp: { acts: [] } });
    expect(faults).toEqual([]);
  }, 60_000);
});

const START_MS = Date.parse('2026-02-02T06:00:00Z');
const HEALING_MS = 5 * DAY_MS;

/** Six finished batches in one chamber, each hotter and with less take than the one before. */
async function openSixFinished() {
  const closedMs = START_MS + 6 * HEALING_MS;
  const site = await openHealingSite({ nowMs: closedMs + DAY_MS, closedMs });
  await site.app.store.probes.place(site.probe, { chamberId: site.chamberId, place: 'canopy' }, START_MS);
  for (let i = 0; i < 6; i++) {
    const openedMs = START_MS + i * HEALING_MS;
    const batch: Batch = {
      ...{ id: `old-${i}`, code: `OLD-${i}`, chamberId: site.chamberId, profileId: 'tomato-common-practice' },
      ...{ profileVersion: 1, scion: 'A', rootstock: 'B', method: '', trays: 10, plants: 1000, holds: [], moves: [] },
      ...{ openedMs, closedMs: openedMs, finishedMs: openedMs + HEALING_MS - HOUR_MS, takenPlants: 980 - 20 * i },
    };
    await site.app.store.batches.add(batch);
    const readings = [];
    for (let timeMs = openedMs; timeMs < openedMs + HEALING_MS; timeMs += 10 * MINUTE_MS) {
      const day = Math.sin(((timeMs - openedMs) / DAY_MS) * 2 * Math.PI);
      readings.push(storedReading({ probe: site.probe, timeMs, temperature: 23 + (3 + i) * day, humidity: 95 - day }));
    }
    await site.app.store.commit({ readings });
  }
  return site;
}

/** The cross-hair by keys alone: seen in the legend, read out, and put away. */
async function readByKeys(page: Page, section: Locator): Promise<void> {
  await page.mouse.move(0, 0);
  await section.getByRole('group', { name: /^Humidity.*Arrow keys move the cross-hair/ }).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowRight');
  const spoken = section.getByRole('status').filter({ hasText: 'Day 2' });
  await expect.poll(() => spoken.textContent()).toMatch(/OLD-0 \d+ \/ \d+\.\d, OLD-5 \d+ \/ \d+\.\d$/);
  await page.keyboard.press('Escape');
  await expect.poll(() => spoken.count()).toBe(0);
}

/** A finger reads too, and what it pointed to stays when it is lifted. */
async function readByFinger(page: Page, picture: Locator, legend: Locator): Promise<void> {
  await picture.scrollIntoViewIfNeeded();
  const { x, y } = (await picture.boundingBox()) ?? { x: 0, y: 0 };
  await moveFingers(page, [{ from: [x + 80, y + 60], to: [x + 180, y + 60] }]);
  await legend
    .getByText(/^\d+ \/ \d+\.\d$/)
    .first()
    .waitFor();
}

describe('what batches teach', () => {
  it('stands beside their take, and several are laid over each other', async () => {
    const site = await openSixFinished();
    const page = await openPage(await openBrowser(), site.app.url, phone, { hasTouch: true });
    const faults = watchConsole(page);
    await page.goto('/');
    await signInOn(page, MANAGER);
    await page.goto('/batches');
    const section = page.getByRole('region', { name: 'What batches teach' });
    await section.getByText('98.0 % (96.9–98.7)').waitFor();
    await section.getByText(/^Highest °C: perhaps\..*\(6 batches\)\.$/).waitFor();
    for (const code of ['OLD-0', 'OLD-5']) await section.getByLabel(`Compare batch ${code}`).check();
    const picture = section.getByRole('img', { name: /^Humidity.*OLD-0, OLD-5$/ });
    await picture.locator('canvas').waitFor();
    const legend = section.getByRole('table', { name: 'The batches that are laid over each other' });
    await legend.getByRole('row', { name: /OLD-5.*88\.0 %/ }).waitFor();
    await picture.hover();
    await legend
      .getByText(/^\d+ \/ \d+\.\d$/)
      .first()
      .waitFor();
    await readByKeys(page, section);
    await readByFinger(page, picture, legend);
    await section.getByText('Values as a table').click();
    await section.getByRole('columnheader', { name: 'OLD-5' }).waitFor();
    await look(page, 'learning');
    await page.setViewportSize(wallScreen);
    await look(page, 'learning', wallScreen);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAccessible(page, 'learning on dark paper');
    expect(faults).toEqual([]);
  }, 60_000);
});
