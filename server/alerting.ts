// How alerts leave the service, put together: keys, channels, outbox, links.
import type { Logger } from 'pino';
import type { AcknowledgeLinks } from './acknowledge-links.ts';
import type { Clock } from './clock.ts';
import { createEmail } from './notify/channels/email.ts';
import { createWebPush } from './notify/channels/web-push.ts';
import { createWebhook } from './notify/channels/webhook.ts';
import { createDelivery, type Delivery } from './notify/deliver-notices.ts';
import { openVapidKeys, subjectOf, type VapidKeys } from './notify/vapid-keys.ts';
import type { Site } from './site.ts';
import type { Store } from './store/store.ts';
import type { Targets } from './telling.ts';

interface AlertingParts {
  readonly store: Store;
  readonly site: Site;
  readonly targets: Targets;
  readonly clock: Clock;
  readonly log: Logger;
  readonly links: Pick<AcknowledgeLinks, 'make'>;
  /** The address people use, as set; null = not set. */
  readonly publicUrl: string | null;
  /** The same, or where it listens. Asked at every message: a free port is known only after listening. */
  readonly address: () => string;
  readonly allowLocalPush: boolean;
}

export interface Alerting {
  readonly delivery: Delivery;
  /** The key that browsers subscribe with. */
  readonly pushKey: string;
  /** A phone says with the secret of a notice that it has shown it; false when the secret is not that of the notice. */
  confirm(noticeId: string, secret: string): Promise<boolean>;
}

export async function openAlerting(parts: AlertingParts): Promise<Alerting> {
  const { store, site, targets, clock, log, links, address } = parts;
  const vapid = await openVapidKeys(store.settings, () => {
    const { contact, email } = targets.channels();
    return subjectOf({ contact, publicUrl: parts.publicUrl, sender: email?.from ?? null });
  });
  const delivery = createDelivery({
    store,
    channels: {
      'web-push': createWebPush({ vapid, allowLocal: parts.allowLocalPush, nowMs: () => clock.nowMs() }),
      email: createEmail(),
      webhook: createWebhook(),
    },
    clock,
    random: Math.random,
    log,
    publicUrl: address,
    manner: site.current,
    targetsOf: (personId) => targets.all().filter((one) => one.personId === personId),
    makeLink: links.make,
    onPhoneGone: () => void targets.refresh().catch((err: unknown) => log.error({ err }, 'the phones cannot be read')),
  });
  return { delivery, pushKey: vapid.publicKey, confirm: confirmer(store, vapid, clock) };
}

function confirmer(store: Store, vapid: VapidKeys, clock: Clock): Alerting['confirm'] {
  return async (noticeId, secret) => {
    if (!vapid.isReceipt(noticeId, secret)) return false;
    const nowMs = clock.nowMs();
    await store.notices.confirm(noticeId, nowMs);
    // A test is in no outbox; its id ends with the phone's.
    const phoneId = (await store.notices.get(noticeId))?.targetId ?? noticeId.split('.').slice(2).join('.');
    await store.phones.confirm(phoneId, nowMs);
    return true;
  };
}
