// From a notice's target to something that can be sent to: the phone, or the webhook as it is set now.
import { CHANNELS_SETTING, channelsSchema } from '../../shared/api/telling.ts';
import type { Notice, Phone } from '../store/store.ts';
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import type { NoticeMessage } from './notice-message.ts';

export interface FoundTarget {
  /** The service behind it; several targets may share one. Never a whole address, which may be a secret. */
  readonly service: string;
  readonly phone: Phone | null;
  send(message: NoticeMessage, signal: AbortSignal): Promise<SendResult>;
}

/** The target of a notice; a text says why there is none. */
export async function findTarget(notice: Notice, parts: DeliveryParts): Promise<FoundTarget | string> {
  if (notice.channel === 'email') return 'e-mail is not set up';
  return notice.channel === 'web-push' ? findPhone(notice.targetId, parts) : findWebhook(parts);
}

async function findPhone(id: string, { store, channels }: DeliveryParts): Promise<FoundTarget | string> {
  const phone = await store.phones.get(id);
  if (phone === null) return 'the phone was removed';
  return {
    service: serviceOf('web-push', phone.endpoint),
    phone,
    send: (message, signal) => channels['web-push'].send(message, phone, signal),
  };
}

async function findWebhook({ store, channels }: DeliveryParts): Promise<FoundTarget | string> {
  const kept = await store.settings.get(CHANNELS_SETTING);
  const { webhook } = kept === undefined || kept === null ? { webhook: null } : channelsSchema.parse(kept);
  if (webhook === null) return 'the webhook was removed';
  return {
    service: serviceOf('webhook', webhook.url),
    phone: null,
    send: (message, signal) => channels.webhook.send(message, webhook, signal),
  };
}

function serviceOf(channel: Notice['channel'], address: string): string {
  return `${channel} ${URL.canParse(address) ? new URL(address).origin : 'without an address'}`;
}
