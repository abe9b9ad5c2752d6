// The webhooks on the page: added, changed, tried and removed one by one, with the others and all secrets staying as they are.
import type { Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { ChannelsView } from '../../shared/api/channels.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { look, watchConsole } from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';
import { openWebhookReceiver, webhookTo } from '../support/webhook-receiver.ts';

const SECRET = 'signs every body';

async function openChannels(webhooks: readonly object[] = [], screen = wallScreen) {
  const { app, api } = await openTestApp();
  await api.put('/channels', { webhooks });
  const page = await openPage(await openBrowser(), app.url, screen);
  const faults = watchConsole(page);
  await page.goto('/channels');
  await signInOn(page, MANAGER);
  await page.getByRole('heading', { name: 'Webhooks' }).waitFor();
  const kept = async () => (await api.get<ChannelsView>('/channels')).body;
  return { app, api, page, faults, kept };
}

async function openReceiver(secret = '') {
  const receiver = await openWebhookReceiver(secret);
  onTestFinished(receiver.close);
  return receiver;
}

/** A webhook as it is entered: without the id that the service gives it. */
function entered(url: string, change: object = {}) {
  const { id: _, ...webhook } = webhookTo(url);
  return { ...webhook, ...change };
}

async function fillNew(page: Page, url: string) {
  await page.getByRole('button', { name: 'Add a webhook' }).click();
  const form = page.getByRole('form', { name: 'Add a webhook' });
  await form.getByLabel('Name').fill('Text messages');
  await form.getByLabel('Address', { exact: true }).fill(url);
  await form.getByLabel('Allow an address on this machine').check();
  return form;
}

describe('webhooks on the page', () => {
  it('one is added with a body, a secret and a header, and its test says what became of it', async () => {
    const receiver = await openReceiver(SECRET);
    const { page, faults, kept } = await openChannels();
    const form = await fillNew(page, receiver.url);
    await form.getByLabel('For whom').selectOption({ label: 'Each person, in their own words' });
    await form.getByLabel('Body').fill('{"to":"{{person.name}}","text":"{{titel}}"}');
    await form.getByText('there is no field {{titel}}').waitFor();
    await form.getByLabel('Body').fill('{"to":"{{person.name}}","text":"{{title}}"}');
    await form.getByText('{"to":"Crew one","text":"▲ Chamber 2: hot 29.1 °C"}').waitFor();
    await form.getByText('What can stand in it').click();
    await form.getByText('{{acknowledgeUrl}}').waitFor();
    await form.getByLabel('Secret').fill(SECRET);
    await form.getByRole('button', { name: 'Add a header' }).click();
    await form.getByLabel('Header 1', { exact: true }).fill('x-key');
    await form.getByLabel('Value of header 1').fill('key of the gateway');
    for (const screen of [wallScreen, phone]) {
      await page.setViewportSize(screen);
      await look(page, 'webhook-form', screen);
    }
    await form.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('heading', { name: 'Text messages' }).waitFor();
    await page.getByRole('button', { name: 'Send a test alert to Text messages' }).click();
    await page.getByText(/Accepted by the webhook \(204\)\. At /).waitFor();
    expect(receiver.calls).toMatchObject([
      { message: { to: MANAGER.name }, isSignatureRight: true, headers: { 'x-key': 'key of the gateway' } },
    ]);
    expect((await kept()).webhooks).toMatchObject([{ audience: 'each-person', hasSecret: true }]);
    expect(faults).toEqual([]);
  }, 120_000);

  it('a test that is refused says so', async () => {
    const receiver = await openReceiver();
    receiver.answerWith({ status: 500 });
    const { page } = await openChannels([entered(receiver.url)]);
    await page.getByRole('button', { name: 'Send a test alert to Webhook' }).click();
    await page.getByText(/It did not go out\..*500/).waitFor();
  });

  it('one is changed: the others, its secret and the value of its header stay', async () => {
    const receiver = await openReceiver(SECRET);
    const first = entered(receiver.url, { name: 'First', secret: SECRET, headers: [{ name: 'x-key', value: 'kept' }] });
    const { page, api, kept } = await openChannels([first, entered(receiver.url, { name: 'Second' })]);
    await page.getByRole('button', { name: 'Change First' }).click();
    const form = page.getByRole('form', { name: 'Change First' });
    // Somebody else changes the second meanwhile.
    const { webhooks } = await kept();
    await api.put('/channels', {
      webhooks: webhooks.map((one) => ({ ...one, name: one.name.replace('Second', 'Other') })),
    });
    await form.getByLabel('Name').fill('Renamed');
    await form.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('heading', { name: 'Renamed' }).waitFor();
    expect((await kept()).webhooks.map(({ name }) => name)).toEqual(['Renamed', 'Other']);
    await page.getByRole('button', { name: 'Send a test alert to Renamed' }).click();
    await page.getByText('Accepted by the webhook (204).').waitFor();
    expect(receiver.calls).toMatchObject([{ isSignatureRight: true, headers: { 'x-key': 'kept' } }]);
  });

  it('its secret is forgotten only when that is asked for', async () => {
    const { page, kept } = await openChannels([entered('https://hooks.example/a', { secret: SECRET })]);
    await page.getByRole('button', { name: 'Change Webhook' }).click();
    const form = page.getByRole('form', { name: 'Change Webhook' });
    await form.getByLabel('Forget the kept secret').check();
    await form.getByRole('button', { name: 'Save' }).click();
    await expect.poll(async () => (await kept()).webhooks[0]?.hasSecret).toBe(false);
  });

  it('a refusal stands at its field, and what was typed stays', async () => {
    const { page, kept } = await openChannels();
    const form = await fillNew(page, 'https://hooks.example/b');
    for (const at of [1, 2]) {
      await form.getByRole('button', { name: 'Add a header' }).click();
      await form.getByLabel(`Header ${at}`, { exact: true }).fill(at === 1 ? 'x-key' : 'content-length');
      await form.getByLabel(`Value of header ${at}`).fill('1');
    }
    await form.getByRole('button', { name: 'Save' }).click();
    const wrong = form.getByLabel('Header 2', { exact: true });
    await expect.poll(() => wrong.getAttribute('aria-invalid')).toBe('true');
    expect(await form.getByLabel('Header 1', { exact: true }).getAttribute('aria-invalid')).toBe('false');
    expect(await form.getByLabel('Name').getAttribute('aria-invalid')).toBe('false');
    expect(await form.getByLabel('Name').inputValue()).toBe('Text messages');
    expect((await kept()).webhooks).toEqual([]);
    await form.getByRole('button', { name: 'Remove Header 2' }).click();
    await form.getByRole('button', { name: 'Save' }).click();
    await expect.poll(async () => (await kept()).webhooks[0]?.headers).toEqual([{ name: 'x-key' }]);
  });

  it('one is removed after a question; at ten no more can be added', async () => {
    const ten = Array.from({ length: 10 }, (_, at) => entered(`https://hooks.example/${at}`, { name: `Hook ${at}` }));
    const { page, kept } = await openChannels(ten);
    await page.getByText('More than ten are not kept.').waitFor();
    expect(await page.getByRole('button', { name: 'Add a webhook' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Remove Hook 3' }).click();
    await page.getByRole('button', { name: 'Remove', exact: true }).last().click();
    await page.getByRole('button', { name: 'Add a webhook' }).waitFor();
    expect((await kept()).webhooks.map(({ name }) => name)).not.toContain('Hook 3');
    expect((await kept()).webhooks).toHaveLength(9);
  });

  it('siren, heartbeat and contact are set, and taken away again', async () => {
    const { page, kept } = await openChannels();
    const form = page.getByRole('form', { name: 'Siren, heartbeat, contact' });
    await form.getByLabel('Sound the siren').uncheck();
    await form.getByLabel('Heartbeat address').fill('https://watch.example/beat');
    await form.getByLabel('Contact for push services').fill('somebody');
    await form.getByRole('button', { name: 'Save' }).click();
    await form.getByText('write it as mailto:name@example.org or https://…').waitFor();
    await form.getByLabel('Contact for push services').fill('mailto:manager@nursery.example');
    await form.getByRole('button', { name: 'Save' }).click();
    const heartbeat = { url: 'https://watch.example/beat', allowLocal: false };
    await expect
      .poll(kept)
      .toMatchObject({ siren: { enabled: false }, heartbeat, contact: 'mailto:manager@nursery.example' });
    await form.getByLabel('Heartbeat address').fill('');
    await form.getByLabel('Contact for push services').fill('');
    await form.getByRole('button', { name: 'Save' }).click();
    await expect.poll(kept).toMatchObject({ siren: { enabled: false }, heartbeat: null, contact: null });
  });
});
