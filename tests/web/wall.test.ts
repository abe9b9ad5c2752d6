// The wall screen: opened by a link without signing in, steps through who needs someone, never acts, and says when it is old.
import { describe, expect, it } from 'vitest';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, tablet, wallScreen } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture, watchConsole } from '../support/look-at-page.ts';
import { openTestApp } from '../support/open-test-app.ts';
import { DEMO_MANAGER, openStillDemo } from '../support/still-demo.ts';
import { openTentSite } from '../support/tent-site.ts';

async function linkOf(api: {
  post<T>(path: string, body: object): Promise<{ body: T }>;
}): Promise<{ id: string; path: string }> {
  const { body } = await api.post<{ id: string; token: string }>('/tokens', { name: 'Packing shed', scope: 'read' });
  return { id: body.id, path: `/wall#token=${body.token}` };
}

describe('a wall screen', () => {
  it('is opened by a link that a manager makes, without signing in, and its token leaves the address', async () => {
    const demo = await openStillDemo();
    const browser = await openBrowser();
    const office = await openPage(browser, demo.url);
    await office.goto('/settings');
    await signInOn(office, DEMO_MANAGER);
    await office.getByRole('button', { name: 'Make a wall link' }).click();
    await office.getByLabel('Where it hangs').fill('Packing shed');
    await office.getByRole('form', { name: 'Wall screens' }).getByRole('button', { name: 'Make a wall link' }).click();
    const address = await office.getByLabel('Wall link', { exact: true }).inputValue();
    await office.getByRole('img', { name: 'Wall link as a code' }).waitFor();
    await keepPicture(office, 'wall-link', wallScreen);
    await expectAccessible(office, 'settings with a wall link');

    const wall = await openPage(browser, demo.url, wallScreen);
    const asked: string[] = [];
    wall.on('request', (request) => asked.push(`${request.url()} ${request.headers()['referer'] ?? ''}`));
    await wall.goto(address);
    await wall.getByRole('listitem').filter({ hasText: 'Tent 4' }).waitFor();
    expect(new URL(wall.url()).hash).toBe('');
    const token = new URL(address).hash.slice('#token='.length);
    expect(asked.filter((line) => line.includes(token))).toEqual([]);

    await office.getByRole('button', { name: 'End the link Packing shed' }).click();
    await wall.reload();
    await wall.getByText('This wall link is not valid any more.').waitFor();
    expect(await wall.getByText('Tent 4').count()).toBe(0);
  });

  it.each([
    { name: 'the wall', screen: wallScreen },
    { name: 'a tablet', screen: tablet },
    { name: 'a phone', screen: phone },
  ])(
    'is whole and readable on $name, when it is calm, when somebody is needed, and when it is lost',
    async ({ screen }) => {
      const demo = await openStillDemo();
      const page = await openPage(await openBrowser(), demo.url, screen);
      const faults = watchConsole(page);
      await page.goto((await linkOf(demo.api)).path);
      await page.getByText(/^(All 4 chambers are in order|No alarm is open)/).waitFor();
      await look(page, 'wall-calm', screen);
      await demo.goOnTo(3 * MINUTE_MS);
      // The chamber that newly needs someone is shown at once.
      await page
        .getByRole('article', { name: 'Tent 1' })
        .getByText(/Far too hot|Too hot/)
        .waitFor();
      await page.getByRole('button', { name: 'Stay here' }).click();
      await page.locator('.strip canvas').first().waitFor();
      await look(page, 'wall-alarm', screen);
      await page.getByRole('button', { name: 'Step on' }).click();
      await page.getByRole('listitem').filter({ hasText: 'Tent 4' }).waitFor();
      await look(page, 'wall-alarm-list', screen);
      expect(await page.getByRole('button').allTextContents()).toEqual(['Step on', 'Stay here']);
      expect(faults).toEqual([]);
    },
    120_000,
  );

  it('says in big type how old its data are when the service is lost, and comes back by itself', async () => {
    const site = await openTentSite();
    const page = await openPage(await openBrowser(), site.app.url, wallScreen);
    await page.goto((await linkOf(site.api)).path);
    await page.getByRole('article', { name: 'Tent 1' }).getByText('25.9').waitFor();
    await site.app.close();
    const banner = page.getByRole('status').filter({ hasText: 'No connection' });
    await banner.waitFor();
    await look(page, 'wall-lost', wallScreen);
    const { port } = new URL(site.app.url);
    await openTestApp({ folder: site.folder, clock: site.clock, environment: { TAKEWELL_HTTP_PORT: port } });
    await banner.waitFor({ state: 'detached' });
  });
});

async function look(page: Parameters<typeof keepPicture>[0], name: string, screen: Screen): Promise<void> {
  await keepPicture(page, name, screen);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}
