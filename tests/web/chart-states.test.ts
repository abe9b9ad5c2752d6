// The chart and the strip when there is little or nothing to show: an empty chamber, one that fell silent, doubted readings, a plan on hold.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, wallScreen } from '../support/browser.ts';
import { drawnText, keepDrawnText } from '../support/drawn-text.ts';
import {
  comeToRest,
  expectAccessible,
  expectNoSidewaysScroll,
  keepPicture,
  watchConsole,
} from '../support/look-at-page.ts';
import { openBatch, openTent, type Tent } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';

async function openChamber(tent: Tent, screen: Screen): Promise<Page> {
  const page = await openPage(await openBrowser(), tent.app.url, screen);
  await keepDrawnText(page);
  await page.goto('/');
  await signInOn(page, MANAGER);
  await page.goto(`/chambers/${tent.chamberId}`);
  await comeToRest(page);
  await page.locator('.chart-canvas canvas').waitFor();
  return page;
}

async function look(page: Page, name: string, screen: Screen): Promise<void> {
  await keepPicture(page, name, screen);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}

describe.each([
  { where: 'a phone', screen: phone },
  { where: 'the wall screen', screen: wallScreen },
])('on $where', ({ screen }) => {
  it('an empty chamber of which nothing was ever heard says so, and its table too', async () => {
    const tent = await openTent();
    const page = await openChamber(tent, screen);
    const faults = watchConsole(page);
    await page.getByText('Nothing was heard in this time.').waitFor();
    expect(await drawnText(page, '.chart-canvas')).toContain('nothing heard');
    await look(page, 'chart-empty', screen);
    await page.getByRole('button', { name: 'Values as a table' }).click();
    await page.getByRole('cell', { name: 'nothing heard' }).first().waitFor();
    expect(faults).toEqual([]);
  }, 60_000);

  it('a chamber that fell silent keeps its gap open, and draws no forecast from an old value', async () => {
    const tent = await openTent();
    await openBatch(tent);
    for (let minute = 0; minute < 180; minute += 5) {
      const isRough = minute > 60 && minute < 90;
      await tent.measure(isRough ? 80 : 22 + minute / 60, 94);
      tent.clock.advance(5 * MINUTE_MS);
    }
    const { batch } = await tent.chamber();
    await tent.api.post(`/batches/${batch?.id}/hold`, {});
    tent.clock.advance(2 * HOUR_MS);
    await tent.app.tick();
    const page = await openChamber(tent, screen);
    const drawn = await drawnText(page, '.chart-canvas');
    expect(drawn).toContain('nothing heard');
    expect(drawn).toContain('on hold');
    await look(page, 'chart-silent', screen);
    await page.getByRole('group', { name: /Arrow keys move/ }).focus();
    await page.keyboard.press('Shift+ArrowLeft');
    await page.locator('.readout').getByText('nothing heard').waitFor();
  }, 60_000);
});
