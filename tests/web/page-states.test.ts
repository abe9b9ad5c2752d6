// Every page while it waits for the service, and when the service fails: it says so in words, offers to try again, and does so.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { AlarmView } from '../../shared/api/alarms.ts';
import type { ChannelsView } from '../../shared/api/channels.ts';
import { MINUTE_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, wallScreen } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture } from '../support/look-at-page.ts';
import { openBatch, openTent, TENT_MS, TENT_PROFILE, type Tent } from '../support/open-tent.ts';
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

/** Everything sent to the manager, who is on duty, fails: an alarm of the service itself, with the clause that says why. */
async function failDelivery({ app, api, clock }: Tent): Promise<void> {
  await api.patch('/people/me', { phoneNumber: '+49301234567' });
  const gateway = { name: 'Gateway', url: 'http://127.0.0.1:9/', allowLocal: true, audience: 'each-person' };
  const { body } = await api.put<ChannelsView>('/channels', { webhooks: [gateway] });
  await api.post('/channels/test', { channel: 'webhook', webhookId: body.webhooks[0]?.id });
  for (let round = 0; round < 12; round += 1) {
    clock.advance(30 * SECOND_MS);
    await app.tick();
  }
}

it.each(screens)(
  'on $name an alarm of the service itself stands above every page, is acknowledged there, and goes when it is over',
  async ({ screen, colorScheme }) => {
    const { tent, page } = await openSite(screen, colorScheme);
    await failDelivery(tent);
    await page.goto('/sensors');
    const banner = page.getByRole('region', { name: 'Alarm of Takewell itself' });
    await banner.getByText('127.0.0.1:9 refuses the connection: is it running?').waitFor();
    await page.goto('/');
    await banner.getByText('nobody has it').waitFor();
    await look(page, 'service-alarm', screen);
    const { body } = await tent.api.post<{ token: string }>('/tokens', { name: 'Wall', scope: 'read' });
    const wall = await openPage(await openBrowser(), tent.app.url, screen, { serviceWorkers: 'block' });
    await wall.goto(`/wall#token=${body.token}`);
    const onWall = wall.getByRole('region', { name: 'Alarm of Takewell itself' });
    await onWall.getByText('127.0.0.1:9 refuses the connection: is it running?').waitFor();
    expect(await onWall.getByRole('button').or(onWall.getByRole('link')).count()).toBe(0);
    await wall.locator('.strip canvas').first().waitFor();
    await look(wall, 'wall-service-alarm', screen);
    await banner.getByRole('button', { name: /^Acknowledge: Alerts do not reach Test manager/ }).click();
    await banner.getByText('acknowledged by Test manager').waitFor();
    expect(await banner.getByRole('button').count()).toBe(0);
    await look(page, 'service-alarm-taken', screen);

    await tent.api.patch('/people/me', { language: 'nl' });
    await page.reload();
    const dutch = page.getByRole('region', { name: 'Alarm van Takewell zelf' });
    await dutch.getByText('127.0.0.1:9 weigert de verbinding: draait het wel?').waitFor();
    await dutch.getByText('Laat deze persoon Takewell op de telefoon openen').waitFor();
    await look(page, 'service-alarm-dutch', screen);
    await dutch.getByRole('link').click();
    await page.getByRole('region', { name: 'Van kracht' }).getByText('weigert de verbinding').waitFor();
    expect(await dutch.count()).toBe(0);

    await page.goto('/');
    await dutch.waitFor();
    await tent.api.put('/channels', { webhooks: [] });
    tent.clock.advance(30 * SECOND_MS);
    await tent.app.tick();
    await dutch.waitFor({ state: 'detached' });
  },
  60_000,
);
