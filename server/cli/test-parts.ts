// What a test message is sent with, beside a service that may be running on the same data folder: the same channels, and nothing written.
import { systemClock } from '../clock.ts';
import { createEmail } from '../notify/channels/email.ts';
import { createWebPush } from '../notify/channels/web-push.ts';
import { createWebhook } from '../notify/channels/webhook.ts';
import type { DeliveryParts } from '../notify/delivery-parts.ts';
import { readChannels } from '../notify/find-target.ts';
import { openVapidKeys, subjectOf } from '../notify/vapid-keys.ts';
import { readSettings, type Settings } from '../settings.ts';
import { openSite } from '../site.ts';
import type { Store } from '../store/store.ts';
import type { Terminal } from './command.ts';

/** The parts of delivery for a store that is opened to be read. What goes wrong inside is told on stderr. */
export async function testParts(store: Store, terminal: Terminal): Promise<DeliveryParts> {
  const settings = readSettings(terminal.env);
  const { contact, email } = await readChannels(store);
  const { publicUrl } = settings;
  const subject = () => subjectOf({ contact, publicUrl, sender: email?.from ?? null });
  // Keys that would only now be made are nobody's: no phone has subscribed with them.
  const vapid = await openVapidKeys({ ...store.settings, put: async () => undefined }, subject);
  const site = await openSite(store);
  return {
    // What became of a target is the service's to keep: it holds who can be reached in memory and would not hear of a change made here.
    store: {
      ...store,
      commit: async () => ({ stored: [] }),
      phones: { ...store.phones, lose: async () => undefined },
    },
    channels: {
      'web-push': createWebPush({ vapid, allowLocal: false }),
      email: createEmail(),
      webhook: createWebhook(),
    },
    // When the other side answered, not when the command was typed.
    clock: systemClock,
    random: () => 0,
    log: {
      info: () => undefined,
      warn: () => undefined,
      error: (details, message) => terminal.ask(`${message}: ${sayCause(details)}\n`),
    },
    publicUrl: () => publicUrl ?? listeningUrl(settings),
    manner: site.current,
    targetsOf: () => [],
    makeLink: () => null,
  };
}

function listeningUrl({ http: { host, port, tls } }: Settings): string {
  return `${tls === null ? 'http' : 'https'}://${host.includes(':') ? `[${host}]` : host}:${port}`;
}

function sayCause(details: object): string {
  return 'err' in details ? String(details.err) : JSON.stringify(details);
}
