// A real Chromium for the tests: one program for all of them, in which each has profiles of its own that talk to nobody but the page they are shown.
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { inject, onTestFinished } from 'vitest';

/** The browser as this test sees it: what it opens there is closed with the test. */
export async function openBrowser(): Promise<Browser> {
  const browser = await chromium.connect(inject('browserEndpoint'));
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
