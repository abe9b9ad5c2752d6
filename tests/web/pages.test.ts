// Every page as people see it, on the smallest phone and on the wall screen: in a real browser, on the demo in the middle of its alarm.
import pino from 'pino';
import type { Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openApp } from '../../server/app.ts';
import { systemClock } from '../../server/clock.ts';
import { readSettings } from '../../server/settings.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, type Screen, signInOn, tablet, wallScreen } from '../support/browser.ts';
import {
  comeToRest,
  expectAccessible,
  expectNoSidewaysScroll,
  keepPicture,
  watchConsole,
} from '../support/look-at-page.ts';
import { MANAGER, makeTestFolder, TEST_SETUP_CODE } from '../support/open-test-app.ts';
import { DEMO_MANAGER, openStillDemo } from '../support/still-demo.ts';

const screens = [
  { name: 'a phone', screen: phone },
  { name: 'a tablet', screen: tablet },
  { name: 'the wall screen', screen: wallScreen },
];

async function look(page: Page, name: string, screen: Screen): Promise<void> {
  await comeToRest(page);
  await keepPicture(page, name, screen);
  await expectNoSidewaysScroll(page, name);
  await expectAccessible(page, name);
}

describe.each(screens)('on $name', ({ screen }) => {
  it('every page of a nursery at work is whole, readable and accessible', async () => {
    const demo = await openStillDemo();
    await demo.goOnTo(3 * MINUTE_MS);
    const page = await openPage(await openBrowser(), demo.url, screen);
    const faults = watchConsole(page);
    await page.goto('/');
    await look(page, 'sign-in', screen);
    await signInOn(page, DEMO_MANAGER);
    await look(page, 'overview', screen);
    const tents = new Map((await demo.chambers()).map(({ name, id }) => [name, id]));
    for (const [name, path, heading] of [
      ['chamber-hot', `/chambers/${tents.get('Tent 1')}`, 'Tent 1'],
      ['chamber-venting', `/chambers/${tents.get('Tent 3')}`, 'Tent 3'],
      ['alarms', '/alarms', 'Alarms'],
      ['batches', '/batches', 'Batches'],
      ['profiles', '/profiles', 'Profiles'],
      ['sensors', '/sensors', 'Sensors'],
      ['people', '/people', 'People and duty'],
      ['my-alerts', '/my-alerts', 'My alerts'],
      ['channels-none', '/channels', 'Channels of the site'],
      ['settings', '/settings', 'Settings'],
      ['nothing', '/no-such-page', 'Nothing here'],
    ] as const) {
      await page.goto(path);
      await page.getByRole('heading', { level: 1, name: heading }).waitFor();
      await look(page, name, screen);
    }
    expect(faults).toEqual([]);
  }, 120_000);

  it('the way from the set-up address to an empty site is whole, readable and accessible', async () => {
    const app = await openEmptySite();
    const page = await openPage(await openBrowser(), app.url, screen);
    const faults = watchConsole(page);
    await page.goto(app.setupUrl ?? '/nowhere');
    await page.getByLabel('Your name').fill(MANAGER.name);
    await page.getByLabel('Password').fill(MANAGER.password);
    await look(page, 'set-up', screen);
    await page.getByRole('button', { name: 'Create manager' }).click();
    await page.getByText('From empty to the first batch').waitFor();
    await look(page, 'first-steps', screen);
    for (const [name, path] of [
      ['alarms-empty', '/alarms'],
      ['batches-empty', '/batches'],
      ['sensors-empty', '/sensors'],
    ] as const) {
      await page.goto(path);
      await look(page, name, screen);
    }
    expect(faults).toEqual([]);
  }, 90_000);
});

/** The service as after its first start: no manager yet. */
async function openEmptySite() {
  const free = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0', TAKEWELL_SETUP_CODE: TEST_SETUP_CODE };
  const settings = readSettings({ ...free, TAKEWELL_DATA_DIR: await makeTestFolder() });
  const app = await openApp({ settings, clock: systemClock, log: pino({ level: 'silent' }), roundMs: 0 });
  onTestFinished(() => app.close());
  return app;
}
