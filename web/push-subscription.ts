// This device's subscription to alerts: making it, renewing it, and what the browser says of it.
import { calls } from './calls.ts';
import type { PushFacts } from './push-needs.ts';

/** Why this device cannot be told of alarms; null = it can. */
export type PushHindrance = 'not-secure' | 'no-worker' | 'no-push' | 'denied' | 'no-key';

/** What stands in the way of alerts on this device. */
export function pushHindrance(pushKey: string): PushHindrance | null {
  if (!isSecureContext) return 'not-secure';
  if (!('serviceWorker' in navigator)) return 'no-worker';
  if (!('PushManager' in globalThis)) return 'no-push';
  if (Notification.permission === 'denied') return 'denied';
  return pushKey === '' ? 'no-key' : null;
}

function bytesOf(base64url: string): Uint8Array<ArrayBuffer> {
  const text = atob(base64url.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

async function subscribe(pushKey: string): Promise<PushSubscription> {
  const registration = await navigator.serviceWorker.ready;
  const old = await registration.pushManager.getSubscription();
  // A subscription belongs to one key: after a change of key it would silently never be told again.
  if (old !== null) await old.unsubscribe();
  return registration.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: bytesOf(pushKey) });
}

/** Asks for permission, subscribes this device and tells the service. Throws what the browser or the service says. */
export async function addThisPhone(name: string, pushKey: string): Promise<void> {
  const subscription = await subscribe(pushKey);
  const { endpoint, keys } = subscription.toJSON();
  await calls.addPhone(name, { endpoint, keys });
}

/** Subscribes anew when the service's key is another than the device's subscription was made with. Returns whether it did. */
export async function renewPhone(name: string, pushKey: string): Promise<boolean> {
  if (pushHindrance(pushKey) !== null) return false;
  const known = keyOf(await subscriptionNow());
  if (known === null || known === pushKey) return false;
  await addThisPhone(name, pushKey);
  return true;
}

/** What the browser says now of this page, its worker and its subscription. */
export async function readPushFacts(): Promise<PushFacts> {
  const canWork = isSecureContext && 'serviceWorker' in navigator;
  const registration = canWork ? await navigator.serviceWorker.getRegistration() : undefined;
  const hasPush = canWork && 'PushManager' in globalThis;
  return {
    origin: location.origin,
    isSecure: isSecureContext,
    worker: canWork ? (registration?.active ? 'ready' : 'starting') : 'none',
    hasPush,
    permission: hasPush ? await permissionNow() : 'default',
    subscribedKey: hasPush ? keyOf(await subscriptionNow()) : null,
  };
}

/** As the browser's own list of permissions has it; a browser that keeps notifications out of that list says it in its older way. */
async function permissionNow(): Promise<NotificationPermission> {
  try {
    const { state } = await navigator.permissions.query({ name: 'notifications' });
    return state === 'prompt' ? 'default' : state;
  } catch {
    return Notification.permission;
  }
}

async function subscriptionNow(): Promise<PushSubscription | null> {
  const registration = await navigator.serviceWorker.getRegistration();
  return (await registration?.pushManager.getSubscription()) ?? null;
}

/** The public key that a subscription was made with, as base64url. */
function keyOf(subscription: PushSubscription | null): string | null {
  const key = subscription?.options.applicationServerKey;
  if (key === null || key === undefined) return null;
  const text = btoa(String.fromCharCode(...new Uint8Array(key)));
  return text.replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}
