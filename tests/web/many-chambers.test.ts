// Sixty chambers in every state: the worst are still seen first, and nothing is lost, cramped or out of reach on any screen.
import { expect, it } from 'vitest';
import { openBrowser, openPage, phone, signInOn, tablet, wallScreen } from '../support/browser.ts';
import { expectAccessible, expectNoSidewaysScroll, keepPicture, watchConsole } from '../support/look-at-page.ts';
import { openBigNursery } from '../support/open-big-nursery.ts';
import { MANAGER } from '../support/open-test-app.ts';

it('shows who needs someone first, in groups, and finds a batch by its code, on every screen', async () => {
  const { app, api } = await openBigNursery();
  const browser = await openBrowser();
  const { body } = await api.post<{ token: string }>('/tokens', { name: 'Wall', scope: 'read' });
  for (const screen of [phone, tablet, wallScreen]) {
    const page = await openPage(browser, app.url, screen);
    const faults = watchConsole(page);
    await page.goto('/');
    await signInOn(page, MANAGER);
    await page.getByText(/^\d+ of 60 chambers need you\.$/).waitFor();
    const need = page.getByRole('region', { name: 'Need you' });
    expect(await need.getByRole('article').count()).toBeGreaterThanOrEqual(12);
    // Critical heat before silence, silence before what is due.
    expect(await need.getByRole('article').first().textContent()).toMatch(/hot/i);
    await need.locator('.strip canvas').first().waitFor();
    await page.evaluate(() => scrollTo(0, 0));
    await keepPicture(page, 'sixty', screen);
    await expectNoSidewaysScroll(page, 'sixty chambers');
    await expectAccessible(page, 'sixty chambers');
    await page.getByRole('searchbox').fill('b-60');
    await page.getByRole('article', { name: 'Tent 1', exact: true }).waitFor({ state: 'detached' });
    await page.getByRole('article', { name: 'Tent 60' }).waitFor();
    expect(await page.getByRole('article').count()).toBe(1);
    await page.goto('/alarms');
    await page
      .getByText(/not acknowledged/)
      .first()
      .waitFor();
    await keepPicture(page, 'sixty-alarms', screen);
    await expectNoSidewaysScroll(page, 'many alarms');
    await expectAccessible(page, 'many alarms');
    const wall = await openPage(browser, app.url, screen);
    await wall.goto(`/wall#token=${body.token}`);
    await wall.getByRole('article').getByText(/hot/i).first().waitFor();
    await keepPicture(wall, 'sixty-wall', screen);
    await expectNoSidewaysScroll(wall, 'a wall of sixty');
    await expectAccessible(wall, 'a wall of sixty');
    expect(faults).toEqual([]);
  }
}, 180_000);
