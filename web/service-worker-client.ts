// The page's side of the service worker: registering it, and asking for a newer one.
import { readerLanguage } from './reader-language.ts';

/** Registers the worker where the browser allows it. Without it the page works, but not offline and without alerts. */
export function startServiceWorker(): void {
  if (!('serviceWorker' in navigator) || !isSecureContext) return;
  navigator.serviceWorker.register('/service-worker.js').catch(() => {
    // The people page tells what is missing; there is nothing to do here.
  });
  // Also to one that takes over later, which may have been installed before it was said.
  navigator.serviceWorker.addEventListener('controllerchange', () => void sayLanguage());
  void sayLanguage();
}

/** Says whose words are to be kept on this device for when there is no connection. */
async function sayLanguage(): Promise<void> {
  const { active } = await navigator.serviceWorker.ready;
  active?.postMessage({ language: readerLanguage });
}

/** Asks for a newer worker: browsers do so when a page is opened, and some pages stand open for weeks. */
export async function renewWorker(): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  await (await navigator.serviceWorker.getRegistration())?.update();
}
