// Who may be told, and through what: every way that alerts can go, from the phones, the people and the channels as they are set up.

import type { Channels, Webhook } from '../api/channels.ts';
import type { Target } from './notice.ts';
import { emailTarget, webhookTarget } from './target-ids.ts';
import { fieldsOf } from './template.ts';

interface ReachablePerson {
  readonly id: string;
  readonly email: string | null;
  readonly phoneNumber: string | null;
}

/** All targets: phones, e-mail of those who have an address, webhooks of the site, and of each person they can serve. */
export function allTargets(
  phones: readonly { readonly id: string; readonly personId: string }[],
  people: readonly ReachablePerson[],
  channels: Pick<Channels, 'email' | 'webhooks'>,
): Target[] {
  return [
    ...phones.map(({ id, personId }): Target => ({ channel: 'web-push', targetId: id, personId })),
    ...(channels.email === null ? [] : people.filter(({ email }) => email !== null).map(toEmail)),
    ...channels.webhooks.flatMap((webhook) => webhookTargets(webhook, people)),
  ];
}

function toEmail({ id }: ReachablePerson): Target {
  return { channel: 'email', targetId: emailTarget(id), personId: id };
}

function webhookTargets(webhook: Webhook, people: readonly ReachablePerson[]): Target[] {
  const { id, audience } = webhook;
  if (audience === 'site') return [{ channel: 'webhook', targetId: webhookTarget(id, null), personId: null }];
  return people
    .filter((person) => isServed(webhook, person))
    .map((person) => ({ channel: 'webhook', targetId: webhookTarget(id, person.id), personId: person.id }));
}

/** A person is served when what the template says about them is known; without a template, when they have a number to call. */
function isServed({ template }: Webhook, { email, phoneNumber }: ReachablePerson): boolean {
  const fields = template === '' ? ['person.phoneNumber'] : fieldsOf(template);
  return (
    (phoneNumber !== null || !fields.includes('person.phoneNumber')) &&
    (email !== null || !fields.includes('person.email'))
  );
}
