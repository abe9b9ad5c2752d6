// Closing while something is under way.
import { describe, expect, test } from 'vitest';
import { createWebhook } from '../../../server/notify/channels/webhook.ts';
import type { DeliveryParts } from '../../../server/notify/delivery-parts.ts';
import { SAMPLE_MS, sampleAlarm } from '../../support/notice-samples.ts';
import { openAlertSite, phoneOne, stateOf, webhook } from '../../support/open-alert-site.ts';

describe('closing', () => {
  test('what a slow service has not answered when time is up goes on waiting in the outbox', async () => {
    const { promise: brokenOff, resolve: breakOff } = Promise.withResolvers<void>();
    const site = await openAlertSite({ closeWithinMs: 0, channels: webhookOnly(breakOff) });
    await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    await site.tell({}, 'escalated', [webhook], SAMPLE_MS);
    site.receiver.answerWith('stall');
    site.delivery.wake();
    await site.receiver.whenCalled(1);
    await site.delivery.close();
    await brokenOff;
    await new Promise(setImmediate);
    expect(site.receiver.calls).toHaveLength(1);
    const [notice] = await site.store.notices.ofAlarm(sampleAlarm.id);
    expect(notice).toMatchObject({ state: 'waiting', attempts: 0, result: null });
  });

  test('what is under way is waited for and recorded', async () => {
    const { promise: released, resolve: release } = Promise.withResolvers<void>();
    const site = await openAlertSite({ channels: webhookOnly(() => released) });
    await site.tell({}, 'raised', [webhook], SAMPLE_MS);
    site.delivery.wake();
    await site.receiver.whenCalled(1);
    const closing = site.delivery.close();
    release();
    await closing;
    expect(await stateOf(site.store)).toMatchObject([{ state: 'sent' }]);
  });

  test('nothing is begun after it', async () => {
    const site = await openAlertSite();
    await site.delivery.close();
    await site.tell({}, 'raised', [phoneOne], SAMPLE_MS);
    site.delivery.wake();
    await site.delivery.deliverNotices();
    expect(site.push.asked()).toBe(0);
  });
});

/** A real webhook channel; `afterwards` is waited for before its result is handed on. */
function webhookOnly(afterwards: () => Promise<void> | void): DeliveryParts['channels'] {
  const channel = createWebhook();
  return {
    'web-push': { send: () => Promise.reject(new Error('no phone in this test')) },
    email: { send: () => Promise.reject(new Error('no e-mail in this test')) },
    webhook: {
      async send(message, target, signal) {
        const result = await channel.send(message, target, signal);
        await afterwards();
        return result;
      },
    },
  };
}
