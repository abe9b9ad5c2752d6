// What people ask of their device is respected: dark paper, no movement, keys alone.
import { describe, expect, it } from 'vitest';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { keys } from '../support/hands.ts';
import { comeToRest, expectAccessible, keepPicture, watchConsole } from '../support/look-at-page.ts';
import { DEMO_MANAGER, openStillDemo } from '../support/still-demo.ts';

describe('who asks for dark', () => {
  const more = [
    ['batches', '/batches'],
    ['sensors', '/sensors'],
    ['profiles', '/profiles'],
    ['editor', '/profiles/tomato-common-practice/edit'],
  ] as const;
  it.each([{ screen: phone }, { screen: wallScreen }])(
    'gets the ledger on dark paper, readable on every page, at $screen.width px',
    async ({ screen }) => {
      const demo = await openStillDemo();
      await demo.goOnTo(3 * MINUTE_MS);
      const page = await openPage(await openBrowser(), demo.url, screen);
      const faults = watchConsole(page);
      await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
      await page.goto('/');
      await signInOn(page, DEMO_MANAGER);
      const tent = (await demo.chambers()).find(({ name }) => name === 'Tent 3');
      for (const [name, path] of [
        ['overview', '/'],
        ['chamber', `/chambers/${tent?.id}`],
        ['alarms', '/alarms'],
        ['people', '/people'],
        ['my-alerts', '/my-alerts'],
        ['channels', '/channels'],
        ['settings', '/settings'],
        ['wall', '/wall'],
        // What these add is the same at every width.
        ...(screen === wallScreen ? more : []),
      ] as const) {
        await page.goto(path);
        await comeToRest(page);
        await keepPicture(page, `dark-${name}`, screen);
        await expectAccessible(page, `${name} on dark paper`);
      }
      expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(43, 42, 38)');
      expect(faults).toEqual([]);
    },
    180_000,
  );
});

describe('who asks for less movement', () => {
  it('sees nothing move', async () => {
    const demo = await openStillDemo();
    const page = await openPage(await openBrowser(), demo.url, phone);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.goto('/');
    await signInOn(page, DEMO_MANAGER);
    await page.getByRole('link', { name: 'Tent 2' }).click();
    await page.getByRole('button', { name: 'Misted' }).click();
    await page.getByText(/Logged: Misted/).waitFor();
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
  });
});

describe('who uses keys alone', () => {
  it('acknowledges an alarm, then logs mist and a gap', async () => {
    const demo = await openStillDemo();
    await demo.goOnTo(3 * MINUTE_MS);
    const page = await openPage(await openBrowser(), demo.url, wallScreen);
    await page.goto('/');
    await signInOn(page, DEMO_MANAGER);
    const press = (name: RegExp | string, role: 'button' | 'link' = 'button') =>
      keys.press(page.getByRole(role, { name }).first());
    await press(/^Acknowledge: Far too hot/);
    await page.getByText('Acknowledged', { exact: true }).first().waitFor();
    await press('Tent 2', 'link');
    await press('Misted');
    await page.getByText(/Logged: Misted/).waitFor();
    await press('Gap…');
    // Opening it puts the focus on its first choice.
    await page.waitForFunction(() => document.activeElement?.textContent === '0 %');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page
      .getByText(/Logged: Gap set, 5 % open/)
      .first()
      .waitFor();
    const batchId = (await demo.chambers()).find(({ name }) => name === 'Tent 2')?.batch?.id;
    const { body } = await demo.api.get<{ log: { kind: string; gapPercent: number | null }[] }>(`/batches/${batchId}`);
    expect(body.log.filter(({ kind }) => kind === 'mist' || kind === 'gap').slice(-2)).toMatchObject([
      { kind: 'mist' },
      { kind: 'gap', gapPercent: 5 },
    ]);
  }, 90_000);
});
