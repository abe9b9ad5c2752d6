// The page's side of the service worker: registering it, and subscribing this device to alerts.
import { calls } from './calls.ts';

/** Why this device cannot be told of alarms; null = it can. */
export type PushHindrance = 'not-secure' | 'no-worker' | 'no-push' | 'denied' | 'no-key';

const keyName = 'takewell-push-key';

/** Registers the worker where the browser allows it. Without it the page works, but not offline and without alerts. */
export function startServiceWorker(): void {
  if (!('serviceWorker' in navigator) || !isSecureContext) return;
  navigator.serviceWorker.register('/service-worker.js').catch(() => {
    // The people page tells what is missing; there is nothing to do here.
  });
}

/** Asks for a newer worker: browsers do so when a page is opened, and some pages stand open for weeks. */
export async function renewWorker(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await (await navigator.serviceWorker.getRegistration())?.update();
}

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
  localStorage.setItem(keyName, pushKey);
}

/** Subscribes anew when the service's key has changed since this device was added. Returns whether it did. */
export async function renewPhone(name: string, pushKey: string): Promise<boolean> {
  const known = localStorage.getItem(keyName);
  if (known === null || known === pushKey || pushHindrance(pushKey) !== null) return false;
  await addThisPhone(name, pushKey);
  return true;
}
