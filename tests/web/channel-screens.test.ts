// Setting up e-mail on the page, and trying it: the answer is what became of it.
import { expect, onTestFinished, test } from 'vitest';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { findFreePort } from '../support/free-port.ts';
import { comeToRest, expectAccessible, expectNoSidewaysScroll, keepPicture } from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';
import { openLamp } from '../support/siren-lamp.ts';
import { openWebhookReceiver, webhookTo } from '../support/webhook-receiver.ts';

test.each([
  ['a phone', phone],
  ['the wall screen', wallScreen],
])(
  'on %s a mail server is entered and tried, and a webhook tried, each with its own result',
  async (_name, screen) => {
    const receiver = await openWebhookReceiver();
    onTestFinished(receiver.close);
    const { app, api } = await openTestApp();
    const { id: _, ...webhook } = webhookTo(receiver.url);
    await api.put('/channels', { webhooks: [webhook] });
    await api.patch('/people/me', { email: 'manager@nursery.example' });
    const page = await openPage(await openBrowser(), app.url, screen);
    await page.goto('/channels');
    await signInOn(page, MANAGER);
    const form = page.getByRole('form', { name: 'E-mail' });
    await form.getByLabel('Mail server').fill('127.0.0.1');
    await form.getByLabel('Port').fill(String(await findFreePort()));
    await form.getByLabel('Sender').fill('alerts@nursery.example');
    await form.getByRole('button', { name: 'Save mail server' }).click();
    await page.getByRole('button', { name: 'Send me a test e-mail' }).click();
    await page.getByText(/It did not go out\. 127\.0\.0\.1:\d+ refuses the connection/).waitFor();
    await page.getByRole('button', { name: 'Send a test alert to Webhook' }).click();
    await page.getByText('Accepted by the webhook (204).').waitFor();
    expect(receiver.calls).toMatchObject([{ message: { kind: 'test' } }]);
    await comeToRest(page);
    await keepPicture(page, 'channels', screen);
    await expectNoSidewaysScroll(page, 'channels');
    await expectAccessible(page, 'channels');
  },
  120_000,
);

test.each([
  ['a phone', phone],
  ['the wall screen', wallScreen],
])(
  'on %s the siren and the heartbeat are tried beside their settings, and what came of it is said',
  async (_name, screen) => {
    const receiver = await openWebhookReceiver();
    onTestFinished(receiver.close);
    const { app, api } = await openTestApp({ sirenTrialMs: 50 });
    await api.put('/channels', { heartbeat: { url: receiver.url, allowLocal: true } });
    const lamp = await openLamp(app.mqttPort ?? 0);
    const page = await openPage(await openBrowser(), app.url, screen);
    await page.goto('/channels');
    await signInOn(page, MANAGER);
    await page.getByRole('button', { name: 'Sound the siren for five seconds' }).click();
    await page
      .getByText(/The broker acknowledged “on” at .* and “off” at .*One connection follows its topic/)
      .waitFor();
    expect(lamp.heard).toContain('on');
    await page.getByRole('button', { name: 'Send one heartbeat now' }).click();
    await page.getByText(/The address answered 204 at/).waitFor();
    await comeToRest(page);
    await keepPicture(page, 'channels-outside', screen);
    await expectNoSidewaysScroll(page, 'channels-outside');
    await expectAccessible(page, 'channels-outside');
    await page.getByLabel('Sound the siren when').uncheck();
    await page.getByRole('form', { name: 'Siren, heartbeat, contact' }).getByRole('button', { name: 'Save' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Sound the siren for five seconds' }).count()).toBe(0);
  },
  120_000,
);
