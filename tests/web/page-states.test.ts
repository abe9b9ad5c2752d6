// Every page while it waits for the service, and when the service fails: it says so in words, offers to try again, and does so.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { AlarmView } from '../../shared/api/alarms.ts';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, wallScreen } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture } from '../support/look-at-page.ts';
import { openBatch, openTent, TENT_MS, TENT_PROFILE } from '../support/open-tent.ts';
import { MANAGER } from '../support/open-test-app.ts';
import { sampleAlarm } from './chamber-samples.ts';

/** On dark paper where it costs no run of its own: contrast there depends on no width. */
const screens = [
  { name: 'a phone', screen: phone, colorScheme: 'light' },
  { name: 'the wall screen', screen: wallScreen, colorScheme: 'dark' },
] as const;

/** Who is signed in is known: everything else waits or fails. */
const asked = /\/api\/v1\/(?!session|stream)/;

async function openSite(screen: Screen, colorScheme: 'light' | 'dark') {
  const tent = await openTent();
  await openBatch(tent);
  const page = await openPage(await openBrowser(), tent.app.url, screen, { serviceWorkers: 'block' });
  await page.emulateMedia({ colorScheme });
  await page.goto('/no-such-page');
  await signInOn(page, MANAGER);
  const pages = [
    ['overview', '/'],
    ['chamber', `/chambers/${tent.chamberId}`],
    ['alarms', '/alarms'],
    ['batches', '/batches'],
    ['profiles', '/profiles'],
    ['profile', `/profiles/${TENT_PROFILE}`],
    ['editor', `/profiles/${TENT_PROFILE}/edit`],
    ['sensors', '/sensors'],
    ['people', '/people'],
    ['my-alerts', '/my-alerts'],
    ['channels', '/channels'],
    ['settings', '/settings'],
    ['first-batch', '/first-batch'],
  ] as const;
  return { tent, page, pages };
}

async function look(page: Page, name: string, screen: Screen): Promise<void> {
  await keepPicture(page, name, screen);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}

it.each(screens)(
  'on $name each page says that it is loading',
  async ({ screen, colorScheme }) => {
    const { page, pages } = await openSite(screen, colorScheme);
    // Never answered: the request stays under way until the page is left.
    await page.route(asked, () => undefined);
    for (const [name, path] of pages) {
      await page.goto(path);
      await page.locator('h1').waitFor({ state: 'attached' });
      await page
        .getByText(/^(Loading…|Asking for the chambers…)$/)
        .first()
        .waitFor();
      await look(page, `loading-${name}`, screen);
    }
  },
  120_000,
);

it.each(screens)(
  'on $name each page says that the service failed, and comes when it is asked again',
  async ({ screen, colorScheme }) => {
    const { page, pages } = await openSite(screen, colorScheme);
    const fail = { status: 503, contentType: 'application/problem+json', body: '{"status":503,"detail":""}' };
    for (const [name, path] of pages) {
      await page.route(asked, (route) => route.fulfill(fail));
      await page.goto(path);
      const again = page.getByRole('button', { name: 'Try again' });
      await again.first().waitFor();
      await look(page, `failed-${name}`, screen);
      await page.unroute(asked);
      // Each part of a page asks for itself.
      for (let left = await again.count(); left > 0; left--) await again.first().click();
      await expect.poll(() => again.count(), { message: name, timeout: 10_000 }).toBe(0);
      expect(await page.getByText('The service had a problem').count(), name).toBe(0);
    }
  },
  120_000,
);

/** In all states that can stand in the list, worst and mildest mixed as they come. */
function manyAlarms(count: number): AlarmView[] {
  const states = ['unacknowledged', 'acknowledged', 'returned-unacknowledged', 'shelved'] as const;
  const rules = ['heat', 'dry', 'silent-probe', 'check-overdue'] as const;
  const priorities = ['critical', 'high', 'medium', 'low'] as const;
  return Array.from({ length: count }, (_, index) => {
    const state = states[index % 4] ?? 'unacknowledged';
    const since = utcText(TENT_MS - index * MINUTE_MS);
    const taken = { acknowledgedAt: since, acknowledgedBy: 'Ida Invented' };
    return sampleAlarm({
      ...{ id: `many-${index}`, chamberName: `Tent ${1 + (index % 60)}`, batchCode: `B-${1 + (index % 60)}` },
      ...{ state, since, occurredAt: since, peakAt: since },
      ...{ rule: rules[index % 3] ?? 'heat', priority: priorities[Math.floor(index / 4) % 4] ?? 'low' },
      ...(state === 'acknowledged' && taken),
      ...(state === 'shelved' && {
        shelvedUntil: utcText(TENT_MS + 60 * MINUTE_MS),
        shelvedReason: 'Probe is being dried',
      }),
    });
  });
}

it.each(screens)(
  'on $name two hundred alarms are a list that begins with the worst',
  async ({ screen, colorScheme }) => {
    const { page } = await openSite(screen, colorScheme);
    await page.route(/\/api\/v1\/alarms\?state=active/, (route) =>
      route.fulfill({ json: { items: manyAlarms(200), nextCursor: null } }),
    );
    await page.goto('/alarms');
    const list = page.getByRole('region', { name: 'In force' }).getByRole('listitem');
    await expect.poll(() => list.count()).toBe(20);
    await list
      .first()
      .getByText(/^critical/)
      .waitFor();
    expect(await list.last().textContent()).toMatch(/critical|high/);
    await page.getByText('100 not acknowledged').waitFor();
    await look(page, 'alarms-200', screen);
    await page.getByRole('button', { name: 'Show all 200' }).click();
    await expect.poll(() => list.count()).toBe(200);
  },
  60_000,
);
