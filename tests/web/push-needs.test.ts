// What an alert on a device needs: judged from what the browser says, and seen in a real one while it changes.
import type { Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { DeliveryResult, PhonesView, PhoneView } from '../../shared/api/telling.ts';
import { judgePushNeeds, type PushFacts } from '../../web/push-needs.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { look } from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';
import { openPushEndpoint } from '../support/push-endpoint.ts';

const red: PhoneView = {
  ...{ id: 'red', name: 'Red', createdAt: '2026-03-01T08:00:00Z', lastResult: null, lastResultAt: null },
  ...{ confirmedAt: '2026-03-01T09:00:00Z', hasOldKey: false },
};
const allThere: PushFacts = {
  ...{ origin: 'https://takewell.example', isSecure: true, worker: 'ready', hasPush: true },
  ...{ permission: 'granted', subscribedKey: 'BKey' },
};
const phones: PhonesView = { items: [red], lost: [], pushKey: 'BKey', publicUrl: 'https://takewell.example' };

/** The needs that are missing. */
function missing(facts: Partial<PushFacts>, told: Partial<PhonesView> = {}) {
  const needs = judgePushNeeds({ ...allThere, ...facts }, { ...phones, ...told });
  return needs.filter(({ isMet }) => !isMet);
}

describe('what is missing', () => {
  it.each<[string, Partial<PushFacts>, Partial<PhonesView>, object[]]>([
    ['nothing, when all is there', {}, {}, []],
    [
      'https, and what the browser hides without it',
      { isSecure: false, worker: 'none', hasPush: false },
      {},
      [{ need: 'secure' }, { need: 'worker', worker: 'not-secure' }, { need: 'permission', permission: 'not-secure' }],
    ],
    ['a window that runs workers', { worker: 'none' }, {}, [{ need: 'worker', worker: 'none' }]],
    ['a public address, where none is set', {}, { publicUrl: null }, [{ need: 'address', publicUrl: null }]],
    ['being opened at the public address', { origin: 'https://10.0.0.7' }, {}, [{ need: 'address' }]],
    ['nothing: a path behind the address does not matter', {}, { publicUrl: 'https://takewell.example/tw' }, []],
    ['an address that is one', {}, { publicUrl: 'takewell' }, [{ need: 'address' }]],
    ['a worker that has started', { worker: 'starting' }, {}, [{ need: 'worker', worker: 'starting' }]],
    ['a browser with push', { hasPush: false }, {}, [{ need: 'permission', permission: 'no-push' }]],
    ['being asked', { permission: 'default' }, {}, [{ need: 'permission', permission: 'default' }]],
    ['a subscription', { subscribedKey: null }, {}, [{ need: 'subscription', how: 'none' }]],
    ['the present key', { subscribedKey: 'BOld' }, {}, [{ need: 'subscription', how: 'earlier-key' }]],
    ['a key of the service', {}, { pushKey: '' }, [{ need: 'subscription', how: 'no-key' }]],
    [
      'a phone in the list: a browser stays subscribed when its phone was removed',
      {},
      { items: [] },
      [{ need: 'subscription', how: 'unlisted' }, { need: 'confirmed' }],
    ],
    ['a confirmation', {}, { items: [{ ...red, confirmedAt: null }] }, [{ need: 'confirmed', phone: null }]],
  ])('%s', (_why, facts, told, expected) => {
    expect(missing(facts, told)).toMatchObject(expected);
    expect(missing(facts, told)).toHaveLength(expected.length);
  });

  it('the phone that confirmed last is the one that is named', () => {
    const blue = { ...red, name: 'Blue', confirmedAt: '2026-03-01T11:00:00+01:00' };
    const needs = judgePushNeeds(allThere, { ...phones, items: [red, blue] });
    expect(needs.at(-1)).toMatchObject({ phone: { name: 'Blue' } });
  });
});

/** A browser without a screen has no push service of its own: its subscription is made here, with this key. */
async function subscribeWith(page: Page, key: string): Promise<void> {
  await page.addInitScript((text) => {
    const bytes = Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (one) => one.charCodeAt(0));
    const subscription = { options: { applicationServerKey: bytes.buffer }, unsubscribe: async () => true };
    PushManager.prototype.getSubscription = async () => subscription as unknown as PushSubscription;
  }, key);
}

const needsOf = (page: Page) => page.getByRole('region', { name: 'What an alert on this device needs' });

describe('on the page', () => {
  it('without https: what is missing, three ways there, and what can tell meanwhile', async () => {
    const publicUrl = 'http://takewell.example';
    const { app } = await openTestApp({ environment: { TAKEWELL_PUBLIC_URL: publicUrl } });
    const page = await openPage(await openBrowser(), publicUrl);
    await page.route(`${publicUrl}/**`, async (route) => {
      const { pathname, search } = new URL(route.request().url());
      if (pathname.endsWith('/stream')) return route.abort();
      return route.fulfill({ response: await route.fetch({ url: app.url + pathname + search }) });
    });
    await page.goto('/my-alerts');
    await signInOn(page, MANAGER);
    const needs = needsOf(page);
    await needs.getByText(`${publicUrl} is not secure. Phones take alerts from https addresses only: ask`).waitFor();
    await needs.getByText(`Opened at the public address, ${publicUrl}.`).waitFor();
    await needs.getByText('Three ways to https, for whoever runs Takewell').click();
    for (const way of ['Own certificate', 'Reverse proxy', 'Tunnel']) await needs.getByText(`${way}:`).waitFor();
    await needs.getByRole('link', { name: 'my e-mail address' }).waitFor();
    expect(await page.getByRole('button', { name: 'Tell this phone' }).count()).toBe(0);
    await needs.getByRole('link', { name: 'Webhooks' }).click();
    await page.getByRole('heading', { name: 'Webhooks' }).and(page.locator(':focus')).waitFor();
    expect(page.url()).toBe(`${publicUrl}/channels#webhooks`);
    await page.goBack();
    await needs.waitFor();
    for (const screen of [wallScreen, phone]) {
      await page.setViewportSize(screen);
      await look(page, 'push-needs', screen);
    }
  }, 120_000);

  it('is checked while it is looked at: worker, permission, key and the last confirmation', async () => {
    const push = await openPushEndpoint();
    onTestFinished(push.close);
    const { app, api } = await openTestApp({ environment: { TAKEWELL_PUBLIC_URL: 'https://takewell.example' } });
    const added = await api.post<PhoneView>('/phones', { name: 'Red', subscription: push.subscribe() });
    const { pushKey } = (await api.get<PhonesView>('/phones')).body;
    const page = await openPage(await openBrowser(), app.url);
    await subscribeWith(page, pushKey);
    await page.goto('/my-alerts');
    await signInOn(page, MANAGER);
    const needs = needsOf(page);
    await needs.getByText(`The page is secure: ${app.url}.`).waitFor();
    const there = needs.getByRole('link', { name: 'Open it there' });
    expect(await there.getAttribute('href')).toBe('https://takewell.example/my-alerts');
    await needs.getByText('The background worker runs.').waitFor();
    await needs.getByText('This device is subscribed with the present key.').waitFor();
    await needs.getByText('Not asked yet whether notifications are allowed').waitFor();
    await page.context().grantPermissions(['notifications']);
    await needs.getByText('Notifications are allowed.').waitFor();
    await needs.getByText('No phone of yours has confirmed an alert yet').waitFor();
    expect((await api.post<DeliveryResult>(`/phones/${added.body.id}/test`)).body.delivered).toBe(true);
    const { noticeId, receipt: secret } = push.received[0]?.data ?? {};
    await api.post('/receipts', { noticeId, secret });
    await page.reload();
    await needs.getByText(/Red last confirmed an alert at /).waitFor();
  }, 60_000);

  it('a subscription that was made with another key says so, whatever the page has kept', async () => {
    const { app } = await openTestApp();
    const page = await openPage(await openBrowser(), app.url);
    await subscribeWith(page, Buffer.alloc(65, 4).toString('base64url'));
    await page.goto('/my-alerts');
    await signInOn(page, MANAGER);
    await needsOf(page).getByText('Subscribed with an earlier key of the service').waitFor();
    await needsOf(page).getByText('Ask whoever runs Takewell to enter that address.').waitFor();
    const setting = needsOf(page).getByText('Set TAKEWELL_PUBLIC_URL to the address that people open');
    expect(await setting.isVisible()).toBe(false);
    await page.setViewportSize(phone);
    await look(page, 'no-address', phone);
    await needsOf(page).getByText('For whoever runs Takewell').click();
    await setting.waitFor();
  });
});
