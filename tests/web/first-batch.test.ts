// From an empty site to the first batch, as a newcomer does it without documentation: with a finger on a phone, a mouse on a tablet, keys at the wall screen.
import pino from 'pino';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openApp } from '../../server/app.ts';
import { systemClock } from '../../server/clock.ts';
import { readSettings } from '../../server/settings.ts';
import { runForJson } from '../server/cli/run-takewell.ts';
import { openBrowser, openPage, phone, signInOn, tablet, wallScreen } from '../support/browser.ts';
import { connectNode } from '../support/connect-node.ts';
import { finger, keys, mouse } from '../support/hands.ts';
import { look, watchConsole } from '../support/look-at-page.ts';
import { MANAGER, makeTestFolder, openTestApp, TEST_SETUP_CODE } from '../support/open-test-app.ts';

async function openEmptySite() {
  const free = { TAKEWELL_HTTP_PORT: '0', TAKEWELL_MQTT_PORT: '0', TAKEWELL_SETUP_CODE: TEST_SETUP_CODE };
  const settings = readSettings({ ...free, TAKEWELL_DATA_DIR: await makeTestFolder() });
  const app = await openApp({ settings, clock: systemClock, log: pino({ level: 'silent' }), roundMs: 0 });
  onTestFinished(() => app.close());
  return app;
}

describe.each([
  { name: 'a phone, with a finger', screen: phone, hand: finger },
  { name: 'a tablet, with a mouse', screen: tablet, hand: mouse },
  { name: 'the wall screen, with keys alone', screen: wallScreen, hand: keys },
])('on $name', ({ screen, hand }) => {
  it('a newcomer comes from the set-up address to a closed chamber, and sees at each step where it stands', async () => {
    const app = await openEmptySite();
    const page = await openPage(await openBrowser(), app.url, screen, { hasTouch: hand === finger });
    const faults = watchConsole(page);
    const step = (name: string) => page.getByRole('listitem').filter({ has: page.getByRole('heading', { name }) });
    await page.goto(app.setupUrl ?? '/nowhere');
    await hand.write(page.getByLabel('Your name'), MANAGER.name);
    await hand.write(page.getByLabel('Password'), MANAGER.password);
    await hand.press(page.getByRole('button', { name: 'Create manager' }));
    await page.getByRole('heading', { level: 1, name: 'From empty to the first batch' }).waitFor();
    await look(page, 'guide-begin', screen);

    await hand.write(page.getByLabel('Name of the site'), 'Valley nursery');
    await hand.write(page.getByLabel('Time zone'), 'Europe/Amsterdam');
    await hand.press(page.getByRole('button', { name: 'That is right' }));
    await step('Name the site').getByText('Valley nursery, Europe/Amsterdam').waitFor();
    await hand.write(page.getByLabel('Name of the chamber'), 'Tent 1');
    await hand.press(page.getByRole('button', { name: 'Add chamber' }));

    const sensor = step('Let a sensor publish');
    await sensor.getByText('Waiting: nothing has been heard yet.').waitFor();
    await sensor.getByText(`mqtt://127.0.0.1:${app.mqttPort}`, { exact: true }).waitFor();
    await look(page, 'guide-waiting', screen);
    const node = await connectNode(app.mqttPort, 'node-1');
    await node.send({ temperature: 'warm' });
    await sensor.getByText('Something came on takewell/v1/node-1/readings, but it could not be read.').waitFor();
    await look(page, 'guide-wrong', screen);
    await node.send({ temperature: 21.4, humidity: 93.1, probe: 'canopy-1' });
    await sensor.getByText(/We hear it: 21\.4\s°C, 93\s%RH\./).waitFor();

    await hand.press(page.getByRole('button', { name: 'Place it: node-1 canopy-1' }));
    await hand.press(page.getByRole('button', { name: 'Save', exact: true }));
    await step('Place the probe').getByText('In place: node-1 canopy-1').waitFor();
    await hand.choose(step('Choose the plan').getByLabel('Profile'), 'Tomato, common practice (Tomato)');
    await look(page, 'guide-plan', screen);
    await hand.press(page.getByRole('button', { name: 'Take this plan' }));
    const batch = step('Open the batch');
    await hand.write(batch.getByLabel('Batch code'), 'B-1');
    await hand.write(batch.getByLabel('Plants'), '1200');
    await look(page, 'guide-batch', screen);
    await hand.press(batch.getByRole('button', { name: 'Open a batch' }));
    await hand.press(page.getByRole('button', { name: 'Close the chamber' }));
    await page.getByRole('link', { name: 'Healing day 1 has begun: go to Tent 1' }).waitFor();
    await look(page, 'guide-closed', screen);
    await page.getByRole('link', { name: 'Go to my alerts' }).waitFor();
    const stored = (await app.store.batches.open())[0];
    expect(stored).toMatchObject({ code: 'B-1', plants: 1200, profileId: 'tomato-common-practice' });
    expect(stored?.closedMs).not.toBeNull();
    expect(faults).toEqual([]);
  }, 120_000);
});

describe('where nodes come from the network', () => {
  it('the name and password of a node are made in place, and are the ones that let it in', async () => {
    const { app, api } = await openTestApp({ environment: { TAKEWELL_MQTT_HOST: '0.0.0.0' } });
    await api.post('/chambers', { name: 'Tent 1' });
    const page = await openPage(await openBrowser(), app.url, phone);
    await page.goto('/first-batch');
    await signInOn(page, MANAGER);
    await page.getByLabel('Node id').fill('tent-7');
    await page.getByRole('button', { name: 'Make a password' }).click();
    const password = await page.getByRole('definition').nth(1).textContent();
    await look(page, 'guide-credentials', phone);
    const node = await connectNode(app.mqttPort, 'tent-7', { username: 'tent-7', password: password ?? '' });
    await node.send({ temperature: 22, humidity: 95 });
    await page.getByText(/We hear it: 22\.0\s°C, 95\s%RH\./).waitFor();
  }, 60_000);
});

describe('without a sensor at hand', () => {
  it('the command that the page shows lets a simulated node be heard', async () => {
    const { app, api } = await openTestApp();
    const broker = `mqtt://127.0.0.1:${app.mqttPort}`;
    expect(await runForJson(['node', '--broker', broker, '--every', '1', '--times', '2'])).toEqual({
      ...{ node: 'simulated-1', sent: 2 },
    });
    const { items } = (await api.get<{ items: { nodeId: string; last: object | null }[] }>('/probes')).body;
    expect(items).toMatchObject([{ nodeId: 'simulated-1', last: { temperature: 23.6 } }]);
  }, 60_000);
});
