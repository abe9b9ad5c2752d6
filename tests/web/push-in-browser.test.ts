// A push in a real Chromium: delivered through the browser's debugging protocol, shown by the worker, confirmed, and taken from the notice with
// the page closed, signed in or out. A browser without a screen has no place for notices: what the worker asks to show is kept instead.
import type { BrowserContext, CDPSession, Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { openHotTent } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';
import { openPushEndpoint } from '../support/push-endpoint.ts';

interface Shown {
  readonly title: string;
  readonly tag: string;
  readonly lang: string;
  readonly data: object;
}

/** What is used inside of the worker. */
interface WorkerScope extends EventTarget {
  shown?: Shown[];
  readonly registration: { showNotification(title: string, options: Omit<Shown, 'title'>): Promise<void> };
}

async function openPushedBrowser() {
  const push = await openPushEndpoint();
  onTestFinished(push.close);
  const tent = await openHotTent({
    async before({ api }) {
      const { endpoint, keys } = push.subscribe();
      await api.post('/phones', { name: 'Red', subscription: { endpoint, keys } });
    },
  });
  await tent.app.deliver();
  const page = await openPage(await openBrowser(), tent.app.url, phone);
  await page.goto('/');
  await signInOn(page, MANAGER);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await keepShown(page.context());
  const payload = push.received[0]?.text ?? '';
  return { ...tent, push, page, payload, context: page.context() };
}

/** Delivers a push to the worker of the page, as the browser would. */
async function deliver(page: Page, url: string, payload: string): Promise<void> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const registered = new Promise<string>((resolve) => {
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const [first] = registrations;
      if (first !== undefined) resolve(first.registrationId);
    });
  });
  await session.send('ServiceWorker.enable');
  await session.send('ServiceWorker.deliverPushMessage', {
    origin: url,
    registrationId: await registered,
    data: payload,
  });
}

function workerOf(context: BrowserContext) {
  const [worker] = context.serviceWorkers();
  if (worker === undefined) throw new Error('there is no worker');
  return worker;
}

function keepShown(context: BrowserContext): Promise<void> {
  return workerOf(context).evaluate(() => {
    const scope = self as unknown as WorkerScope;
    scope.shown = [];
    scope.registration.showNotification = async (title, { tag, lang, data }) =>
      void scope.shown?.push({ title, tag, lang, data });
  });
}

function shownOn(context: BrowserContext): Promise<{ title: string; tag: string }[]> {
  return workerOf(context).evaluate(() =>
    ((self as unknown as WorkerScope).shown ?? []).map(({ title, tag }) => ({ title, tag })),
  );
}

/** Presses the button of the notice that was shown last: the event that the browser would send to the worker. */
function pressAcknowledge(context: BrowserContext): Promise<void> {
  return workerOf(context).evaluate(async () => {
    const scope = self as unknown as WorkerScope;
    const { data, lang } = scope.shown?.at(-1) ?? {};
    const waited: Promise<unknown>[] = [];
    const waitUntil = (work: Promise<unknown>) => void waited.push(work);
    const notification = { data, lang, close: () => undefined };
    scope.dispatchEvent(
      Object.assign(new Event('notificationclick'), { notification, action: 'acknowledge', waitUntil }),
    );
    await Promise.all(waited);
  });
}

test('is shown, and the phone confirms that it was', async () => {
  const site = await openPushedBrowser();
  await deliver(site.page, site.app.url, site.payload);
  await expect.poll(() => shownOn(site.context)).toEqual([{ title: '▲ Tent 1: hot 28.5 °C', tag: site.hot.id }]);
  const { noticeId } = site.push.received[0]?.data ?? {};
  await expect
    .poll(async () => (await site.app.store.notices.get(String(noticeId)))?.confirmedMs)
    .toBe(site.clock.nowMs());
}, 120_000);

test.each([
  ['signed in: by the cookie', false],
  ['signed out: by what came in the push', true],
])(
  'is taken from the notice with the page elsewhere, %s',
  async (_how, isSignedOut) => {
    const site = await openPushedBrowser();
    await deliver(site.page, site.app.url, site.payload);
    await expect.poll(() => shownOn(site.context)).toHaveLength(1);
    if (isSignedOut) await site.context.clearCookies();
    await site.page.goto('about:blank');
    await pressAcknowledge(site.context);
    await expect.poll(async () => (await site.alarms())[0]?.state).toBe('acknowledged');
    expect((await site.alarms())[0]?.acknowledgedBy).toBe(MANAGER.name);
  },
  120_000,
);
