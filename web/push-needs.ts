// What an alert on this device needs, with what is so now. Judges only: what the browser says is read in `push-subscription.ts`.
import type { PhonesView } from '../shared/api/telling.ts';

/** What the browser says of this page and this device. */
export interface PushFacts {
  readonly origin: string;
  readonly isSecure: boolean;
  /** `none` = the browser runs no workers for this page. */
  readonly worker: 'none' | 'starting' | 'ready';
  readonly hasPush: boolean;
  readonly permission: NotificationPermission;
  /** The key that the device's subscription was made with, as base64url; null = it has none. */
  readonly subscribedKey: string | null;
}

/** One need and how it stands. `isMet` false = this is missing. */
export type PushNeed = { readonly isMet: boolean } & (
  | { readonly need: 'secure'; readonly origin: string }
  | { readonly need: 'address'; readonly publicUrl: string | null }
  | { readonly need: 'worker'; readonly worker: PushFacts['worker'] | 'not-secure' }
  | { readonly need: 'permission'; readonly permission: NotificationPermission | 'no-push' | 'not-secure' }
  | { readonly need: 'subscription'; readonly how: 'none' | 'unlisted' | 'earlier-key' | 'present-key' | 'no-key' }
  | { readonly need: 'confirmed'; readonly phone: { readonly name: string; readonly at: string } | null }
);

/** The needs in the order in which they are met. */
export function judgePushNeeds(facts: PushFacts, phones: PhonesView): PushNeed[] {
  const { origin, isSecure, hasPush } = facts;
  const { publicUrl } = phones;
  // Without https a browser hides worker and push, whether it has them or not.
  const worker = isSecure ? facts.worker : 'not-secure';
  const granted = hasPush ? facts.permission : 'no-push';
  const permission = isSecure ? granted : 'not-secure';
  const how = subscriptionOf(facts, phones);
  const phone = lastConfirmed(phones);
  return [
    { need: 'secure', isMet: isSecure, origin },
    { need: 'address', isMet: originOf(publicUrl) === origin, publicUrl },
    { need: 'worker', isMet: worker === 'ready', worker },
    { need: 'permission', isMet: permission === 'granted', permission },
    { need: 'subscription', isMet: how === 'present-key', how },
    { need: 'confirmed', isMet: phone !== null, phone },
  ];
}

function subscriptionOf({ subscribedKey }: PushFacts, { pushKey, items }: PhonesView) {
  if (pushKey === '') return 'no-key';
  if (subscribedKey === null) return 'none';
  if (subscribedKey !== pushKey) return 'earlier-key';
  // The browser keeps its subscription when the phone was removed from the list, or belongs to another person.
  return items.length === 0 ? 'unlisted' : 'present-key';
}

function lastConfirmed({ items }: PhonesView) {
  const confirmed = items.flatMap(({ name, confirmedAt: at }) => (at === null ? [] : [{ name, at }]));
  return confirmed.sort((one, other) => Date.parse(other.at) - Date.parse(one.at))[0] ?? null;
}

function originOf(url: string | null): string | null {
  return url !== null && URL.canParse(url) ? new URL(url).origin : null;
}
