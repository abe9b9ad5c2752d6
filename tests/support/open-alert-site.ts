// A site with two phones and a webhook, all real and reachable, and the delivery between its store and them.
import { onTestFinished } from 'vitest';
import type { DeliveryParts } from '../../server/notify/delivery-parts.ts';
import type { Notice, Store } from '../../server/store/store.ts';
import { SAMPLE_MS, sampleAlarm } from './notice-samples.ts';
import { openDelivery } from './open-delivery.ts';
import { openOutbox } from './open-outbox.ts';
import { openPushEndpoint } from './push-endpoint.ts';
import { openWebhookReceiver, webhookTo } from './webhook-receiver.ts';

export const phoneOne = { channel: 'web-push', targetId: 'phone-1', personId: 'crew-1' } as const;
export const phoneTwo = { channel: 'web-push', targetId: 'phone-2', personId: 'crew-1' } as const;
export const webhook = { channel: 'webhook', targetId: 'webhook:first', personId: null } as const;

/** Opens it at the moment of the samples; everything is closed when the test ends. `change` replaces parts of the delivery. */
export async function openAlertSite(change: Partial<DeliveryParts> = {}) {
  const [push, receiver] = [await openPushEndpoint(), await openWebhookReceiver('secret')];
  onTestFinished(push.close);
  onTestFinished(receiver.close);
  const clock = { ms: SAMPLE_MS };
  const outbox = await openOutbox(SAMPLE_MS);
  const phones = [await outbox.addPhone(push.subscribe()), await outbox.addPhone(push.subscribe())] as const;
  await outbox.setChannels({ webhooks: [webhookTo(receiver.url, { secret: 'secret' })] });
  const { delivery, logged } = await openDelivery(outbox.store, clock, change);
  return { ...outbox, push, receiver, clock, phones, delivery, logged };
}

/** What became of the notices of an alarm. */
export async function stateOf(
  store: Store,
  alarmId = sampleAlarm.id,
): Promise<Pick<Notice, 'kind' | 'state' | 'result'>[]> {
  const notices = await store.notices.ofAlarm(alarmId);
  return notices.map(({ kind, state, result }) => ({ kind, state, result }));
}

/** The store with another outbox in some of its functions. */
export function withNotices(store: Store, change: Partial<Store['notices']>): Store {
  return { ...store, notices: { ...store.notices, ...change } };
}
