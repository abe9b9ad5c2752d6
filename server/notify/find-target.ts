// From a notice's target to something that can be sent to: the phone, the person's e-mail or the webhook, as they are set now.
import { CHANNELS_SETTING, type Channels, channelsSchema, noChannels } from '../../shared/api/channels.ts';
import { type Finding, finding } from '../../shared/finding.ts';
import { webhookIdOf } from '../../shared/telling/target-ids.ts';
import type { Notice, Person, Phone } from '../store/store.ts';
import type { SendResult } from './channels/channel.ts';
import type { DeliveryParts } from './delivery-parts.ts';
import type { NoticeMessage } from './notice-message.ts';

export interface FoundTarget {
  /** The service behind it; several targets may share one. Never a whole address, which may be a secret. */
  readonly service: string;
  readonly phone: Phone | null;
  /** Who is told by it; null = a program. */
  readonly person: Person | null;
  /** The name of the program that is told, '' when a person is. */
  readonly program: string;
  send(message: NoticeMessage, signal?: AbortSignal): Promise<SendResult>;
}

/** There is none, and why. */
export interface NoTarget {
  readonly missing: Finding;
}

/** The target of a notice, as it is now. */
export async function findTarget(
  notice: Pick<Notice, 'channel' | 'targetId' | 'personId'>,
  parts: DeliveryParts,
): Promise<FoundTarget | NoTarget> {
  const person = notice.personId === null ? null : await parts.store.people.get(notice.personId);
  if (person === null && notice.personId !== null) return { missing: finding('personGone') };
  if (notice.channel === 'web-push') return findPhone(notice.targetId, person, parts);
  const channels = await readChannels(parts.store);
  if (notice.channel === 'email') return findEmail(channels.email, person, parts);
  return findWebhook(channels.webhooks, notice.targetId, person, parts);
}

/** The channels as they are kept now. */
export async function readChannels({ settings }: Pick<DeliveryParts['store'], 'settings'>): Promise<Channels> {
  const kept = await settings.get(CHANNELS_SETTING);
  return kept === undefined || kept === null ? noChannels : channelsSchema.parse(kept);
}

async function findPhone(id: string, person: Person | null, { store, channels }: DeliveryParts) {
  const phone = await store.phones.get(id);
  if (phone === null) return { missing: finding('phoneGone') };
  return {
    service: serviceOf('web-push', phone.endpoint),
    phone,
    person,
    program: '',
    send: (message: NoticeMessage, signal?: AbortSignal) => channels['web-push'].send(message, phone, signal),
  };
}

function findEmail(server: Channels['email'], person: Person | null, { channels }: DeliveryParts) {
  if (server === null) return { missing: finding('emailOff') };
  const to = person?.email ?? null;
  if (to === null) return { missing: finding('noAddress') };
  return {
    service: `email ${server.host}:${server.port}`,
    phone: null,
    person,
    program: '',
    send: (message: NoticeMessage, signal?: AbortSignal) => channels.email.send(message, { server, to }, signal),
  };
}

function findWebhook(
  webhooks: Channels['webhooks'],
  targetId: string,
  person: Person | null,
  { channels }: DeliveryParts,
) {
  const webhook = webhooks.find(({ id }) => id === webhookIdOf(targetId));
  if (webhook === undefined) return { missing: finding('webhookGone') };
  return {
    service: serviceOf('webhook', webhook.url),
    phone: null,
    person,
    program: person === null ? webhook.name : '',
    send: (message: NoticeMessage, signal?: AbortSignal) => channels.webhook.send(message, webhook, signal),
  };
}

function serviceOf(channel: Notice['channel'], address: string): string {
  return `${channel} ${URL.canParse(address) ? new URL(address).origin : 'without an address'}`;
}
