// How the kept channels change and how they are shown. A secret that is not named stays, but only for the address it was entered for:
// else whoever may change an address could have the secret sent to themselves.
import type { Channels, ChannelsChange, ChannelsView, EmailSettings, Webhook } from '../api/channels.ts';
import type { Fault } from '../problem.ts';
import type { Say } from '../words/shared-words.ts';
import { templateFaults } from './template.ts';

export type Changed = { readonly channels: Channels } | { readonly faults: readonly Fault[] };

type WebhookChange = NonNullable<ChannelsChange['webhooks']>[number];

const ENTER_AGAIN: Say = ({ faults }) => faults.enterAgain;

/** The channels after a change; `makeId` names new webhooks. */
export function changeChannels(kept: Channels, change: ChannelsChange, makeId: () => string): Changed {
  const faults: Fault[] = [];
  const channels = {
    email: change.email === undefined ? kept.email : changeEmail(kept.email, change.email, faults),
    webhooks:
      change.webhooks === undefined
        ? kept.webhooks
        : change.webhooks.map((one, index) => changeWebhook(one, kept, `webhooks.${index}`, { makeId, faults })),
    siren: change.siren ?? kept.siren,
    heartbeat: change.heartbeat === undefined ? kept.heartbeat : change.heartbeat,
    contact: change.contact === undefined ? kept.contact : change.contact,
  };
  return faults.length === 0 ? { channels } : { faults };
}

function changeEmail(kept: EmailSettings | null, change: EmailSettings | null, faults: Fault[]): EmailSettings | null {
  if (change === null) return null;
  const { password = kept?.password ?? '', user = '', ...rest } = change;
  if (user === '' || password === '') return user === '' ? rest : { ...rest, user };
  if (change.password === undefined && kept !== null && kept.host !== change.host)
    faults.push({ where: 'email.password', reason: ENTER_AGAIN });
  return { ...rest, user, password };
}

interface Making {
  readonly makeId: () => string;
  readonly faults: Fault[];
}

function changeWebhook(change: WebhookChange, { webhooks }: Channels, where: string, making: Making): Webhook {
  const before = webhooks.find(({ id }) => id === change.id);
  const { id = making.makeId(), secret = before?.secret ?? '', headers, ...rest } = change;
  const takes = (field: string) => {
    if (before !== undefined && originOf(before.url) !== originOf(change.url))
      making.faults.push({ where: `${where}.${field}`, reason: ENTER_AGAIN });
  };
  if (change.secret === undefined && secret !== '') takes('secret');
  const valued = headers.map(({ name, value }, index) => {
    const old = before?.headers.find((one) => one.name === name)?.value;
    if (value === undefined && old === undefined)
      making.faults.push({ where: `${where}.headers.${index}.value`, reason: ({ faults: say }) => say.enterValue });
    if (value === undefined && old !== undefined) takes(`headers.${index}.value`);
    return { name, value: value ?? old ?? '' };
  });
  for (const { reason } of templateFaults(change.template, change.contentType))
    making.faults.push({ where: `${where}.template`, reason });
  return { ...rest, id, headers: valued, ...(secret !== '' && { secret }) };
}

/** Scheme, user, host and port. */
function originOf(url: string): string {
  return /^[^:]*:\/\/[^/?#\\]*/.exec(url.toLowerCase())?.[0] ?? url;
}

/** The channels without their secrets. */
export function viewChannels({ email, webhooks, ...rest }: Channels): ChannelsView {
  return {
    ...rest,
    email: email === null ? null : viewEmail(email),
    webhooks: webhooks.map(({ secret, headers, ...webhook }) => ({
      ...webhook,
      hasSecret: secret !== undefined,
      headers: headers.map(({ name }) => ({ name })),
    })),
  };
}

function viewEmail({ password, ...email }: EmailSettings): NonNullable<ChannelsView['email']> {
  return { ...email, hasPassword: password !== undefined };
}
