// What is asked of every page that is shown: it has come to rest, no fault against WCAG 2.2 A/AA that axe finds, no sideways scrolling on a phone, no
// fault in the browser's console. A picture is kept of each in tests/screens/.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Words } from '../../web/late-strings.ts';
import type { Screen } from './browser.ts';
import { english } from './page-words.ts';

const screens = join(import.meta.dirname, '../screens');

/** Collects what the browser complains of on a page from now on: scripts that fail, blocked content, missing files. */
export function watchConsole(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`${message.text()} (${message.location().url})`);
  });
  return faults;
}

/** Waits until nothing loads or is drawn any more, also below the first screenful; `words` are those of the page. */
export async function comeToRest(page: Page, words: Words = english): Promise<void> {
  await page.locator('h1').waitFor({ state: 'attached' });
  const waiting = [words.problems.loading, words.chart.loading, words.overview.loading, words.alarms.loading];
  await page.waitForFunction((texts) => !texts.some((text) => document.body.textContent.includes(text)), waiting);
  // A strip is asked for when it comes into view.
  for (const strip of await page.locator('.strip').all()) {
    await strip.scrollIntoViewIfNeeded();
    await strip.locator('> *').first().waitFor();
  }
  await page.evaluate(() => scrollTo(0, 0));
}

/** Keeps a picture of the whole page, in a window as high as the page, so that what is fixed to its foot stands there. */
export async function keepPicture(page: Page, name: string, screen: Screen): Promise<void> {
  mkdirSync(screens, { recursive: true });
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width: screen.width, height: Math.max(height, screen.height) });
  await page.screenshot({ path: join(screens, `${name}-${screen.width}.png`) });
  await page.setViewportSize(screen);
}

/** WCAG 2.2, levels A and AA, with all that it took over from 2.0 and 2.1. */
const wcag = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Fails with each rule of WCAG 2.2 A/AA that axe finds broken, however lightly, and where. */
export async function expectAccessible(page: Page, name: string): Promise<void> {
  // Our pages hold no other pages, for which it would open one more page each time; what is in order needs no list.
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true);
  const { violations } = await axe.withTags(wcag).analyze();
  const said = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  expect(said, `accessibility of ${name}`).toEqual([]);
}

/** Fails when the page is wider than its window, once what the window's size has moved has come to rest. */
export async function expectNoSidewaysScroll(page: Page, name: string): Promise<void> {
  const tooWide = () =>
    page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement;
      return scrollWidth - clientWidth;
    });
  await expect.poll(tooWide, { message: `px by which ${name} is too wide`, timeout: 3_000 }).toBe(0);
}

/** Everything that is asked of a page, of the state that it is in now. */
export async function look(page: Page, name: string, screen: Screen): Promise<void> {
  await comeToRest(page);
  await keepPicture(page, name, screen);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}
