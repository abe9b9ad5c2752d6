// The page's side of the service worker: registering it, and asking for a newer one.
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
