// A real Chromium for the tests, each time with a fresh profile that talks to nobody but the page it is shown.
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { onTestFinished } from 'vitest';
import { launchBrowser } from './launch-browser.ts';

/** Starts a browser that ends with the test. Throws an Error of one sentence when there is none. */
export async function openBrowser(): Promise<Browser> {
  const browser = await launchBrowser();
  onTestFinished(() => browser.close());
  return browser;
}

export interface Screen {
  readonly width: number;
  readonly height: number;
}

/** The smallest phone, a tablet held upright, and the wall screen that the pages are made for. */
export const phone: Screen = { width: 360, height: 740 };
export const tablet: Screen = { width: 768, height: 1024 };
export const wallScreen: Screen = { width: 1920, height: 1080 };

/** A page of its own context (cookies, storage, service worker) on the service at `url`. */
export async function openPage(
  browser: Browser,
  url: string,
  screen: Screen = wallScreen,
  device: Pick<BrowserContextOptions, 'timezoneId' | 'hasTouch' | 'serviceWorkers'> = {},
): Promise<Page> {
  const context = await browser.newContext({ baseURL: url, locale: 'en-US', viewport: screen, ...device });
  context.setDefaultTimeout(15_000);
  return context.newPage();
}

/** Signs in through the page's own form, wherever it stands. */
export async function signInOn(page: Page, { name, password }: { name: string; password: string }): Promise<void> {
  await page.getByLabel('Name').fill(name);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await page.getByRole('banner').getByRole('navigation').waitFor();
}
