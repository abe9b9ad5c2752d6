// Whether alerts reach me, on the page: what it says before there is a way, after a failed test, and after one that was taken over.
import { expect, onTestFinished, test } from 'vitest';
import type { ChannelsView } from '../../shared/api/channels.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { comeToRest, expectAccessible, expectNoSidewaysScroll, keepPicture } from '../support/look-at-page.ts';
import { MANAGER, openTestApp } from '../support/open-test-app.ts';
import { openWebhookReceiver } from '../support/webhook-receiver.ts';

test('my page of alerts says whether alerts reach me, and what to do when they do not', async () => {
  const receiver = await openWebhookReceiver();
  onTestFinished(receiver.close);
  const { app, api } = await openTestApp();
  const page = await openPage(await openBrowser(), app.url, phone);
  await page.goto('/my-alerts');
  await signInOn(page, MANAGER);
  const reach = page.getByRole('region', { name: 'Whether alerts reach me' });
  await reach.getByText('Alerts cannot reach you', { exact: true }).waitFor();
  await reach.getByText('Add a phone or enter an e-mail address below').waitFor();
  await reach.getByText('You are on duty.').waitFor();

  await api.patch('/people/me', { phoneNumber: '+49301234567' });
  const gateway = { name: 'Gateway', url: receiver.url, allowLocal: true, headers: [], audience: 'each-person' };
  const { body } = await api.put<ChannelsView>('/channels', { webhooks: [gateway] });
  const sendTest = () => api.post('/channels/test', { channel: 'webhook', webhookId: body.webhooks[0]?.id });
  receiver.answerWith({ status: 404 });
  await sendTest();
  await reach.getByText('Alerts do not reach you', { exact: true }).waitFor();
  await reach.getByText(/Gateway: failed .*404/).waitFor();
  for (const screen of [wallScreen, phone]) {
    await page.setViewportSize(screen);
    await comeToRest(page);
    await expectAccessible(page, 'people who are not reached');
    await expectNoSidewaysScroll(page, 'people who are not reached');
    await keepPicture(page, 'my-reach', screen);
  }

  receiver.answerWith({ status: 204 });
  await sendTest();
  await reach.getByText('Alerts can reach you now', { exact: true }).waitFor();
  await reach.getByText(/Gateway: taken over/).waitFor();
  expect(receiver.calls).toHaveLength(2);
}, 120_000);
