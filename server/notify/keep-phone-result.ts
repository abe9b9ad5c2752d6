// After a push: the phone remembers what became of it, or is forgotten when its subscription has ended.
import type { Phone } from '../store/store.ts';
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';

type Parts = Pick<DeliveryParts, 'store' | 'clock' | 'log' | 'onPhoneGone'>;

/** Never rejects: the result of a push is worth having even when it cannot be kept. */
export async function keepPhoneResult(phone: Phone, result: SendResult, parts: Parts): Promise<void> {
  try {
    if (result.delivered) return await parts.store.phones.setResult(phone.id, result.detail, parts.clock.nowMs());
    if (result.gone === true) return await forget(phone, result.reason, parts);
    await parts.store.phones.setResult(phone.id, result.reason, parts.clock.nowMs());
  } catch (err) {
    parts.log.error({ err, phone: phone.id }, 'the result of a push could not be kept with its phone');
  }
}

async function forget(phone: Phone, reason: string, { store, log, onPhoneGone }: Parts): Promise<void> {
  const now = await store.phones.get(phone.id);
  // It may have subscribed anew while the old subscription was being tried.
  if (now === null || now.endpoint !== phone.endpoint) return;
  await store.phones.remove(phone.id);
  log.warn({ phone: phone.id, person: phone.personId, reason }, 'phone removed');
  onPhoneGone?.(phone, reason);
}
