// Alerts when the page is not open, and the last known overview when the service cannot be reached.
// Every push shows a notice: browsers take the right away from a worker that stays silent.
import { type PushMessage, readPush } from './push-message.ts';
import { alertWords } from './strings.ts';

declare const self: ServiceWorkerGlobalScope;

/** Every file of the built page, put in by the build: a new version is another list, and so another worker. */
declare const SHELL_FILES: readonly string[];
declare const SHELL_VERSION: string;

const shellPrefix = 'takewell-shell';
const shellCache = `${shellPrefix}-${SHELL_VERSION}`;
const keptCache = 'takewell-kept';
const keptPaths = ['/api/v1/session', '/api/v1/chambers', '/api/v1/probes'];
const keptAtHeader = 'x-takewell-kept-at';
const shellTimeOutMs = 5_000;

function optionsOf(message: PushMessage): NotificationOptions & { actions?: object[]; renotify?: boolean } {
  const open = { action: 'open', title: alertWords.open };
  const acknowledge = { action: 'acknowledge', title: alertWords.acknowledge };
  return {
    body: message.body,
    tag: message.tag,
    icon: '/mark-192.png',
    badge: '/mark-192.png',
    data: { path: message.path, alarmId: message.alarmId },
    // The same alarm told again replaces its notice and sounds again; one that is over does not.
    renotify: message.isUrgent,
    requireInteraction: message.isUrgent,
    actions: message.canAcknowledge ? [acknowledge, open] : [open],
  };
}

self.addEventListener('push', (event) => {
  const message = readPush(event.data?.text() ?? '', self.location.origin);
  event.waitUntil(self.registration.showNotification(message.title, optionsOf(message)));
});

async function openPage(path: string): Promise<void> {
  const windows = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  const open = windows[0];
  if (open === undefined) {
    await self.clients.openWindow(path);
    return;
  }
  await open.focus();
  await open.navigate(path);
}

async function acknowledge(alarmId: string, path: string): Promise<void> {
  const answer = await fetch(`/api/v1/alarms/${encodeURIComponent(alarmId)}/acknowledge`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
    // Out of reach is a "no" like any other: it is said below.
  }).catch(() => null);
  if (answer?.ok === true) return;
  // Signed out or out of reach: say so and lead to the place where it can be done.
  await self.registration.showNotification(alertWords.fallbackTitle, {
    body: alertWords.acknowledgeFailed,
    tag: alarmId,
    data: { path, alarmId },
  });
}

self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const { path = '/', alarmId = '' } = (event.notification.data ?? {}) as { path?: string; alarmId?: string };
  const isAcknowledge = event.action === 'acknowledge' && alarmId !== '';
  event.waitUntil(isAcknowledge ? acknowledge(alarmId, path) : openPage(path));
});

/** Page and files of one version together: a page that is kept always finds its own files. */
async function keepShell(): Promise<void> {
  const cache = await caches.open(shellCache);
  await cache.addAll(['/', ...SHELL_FILES]);
  await self.skipWaiting();
}

/** The version before stays for pages that are still open on it; older ones go. */
async function takeOver(): Promise<void> {
  const shells = (await caches.keys()).filter((name) => name.startsWith(shellPrefix) && name !== shellCache);
  await Promise.all(shells.slice(0, -1).map((name) => caches.delete(name)));
  await self.clients.claim();
}

self.addEventListener('install', (event) => {
  event.waitUntil(keepShell());
});
self.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

/** The page itself: from the service when it answers soon, else as it was kept. */
async function shell(request: Request): Promise<Response> {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(shellTimeOutMs) });
  } catch (problem) {
    const kept = await (await caches.open(shellCache)).match('/');
    if (kept === undefined) throw problem;
    return kept;
  }
}

/** Built files carry a hash of their content in their name: what is kept is never wrong. */
async function asset(request: Request): Promise<Response> {
  return (await caches.match(request)) ?? fetch(request);
}

async function keep(path: string, answer: Response): Promise<void> {
  const cache = await caches.open(keptCache);
  const headers = new Headers(answer.headers);
  headers.set(keptAtHeader, new Date().toISOString());
  await cache.put(path, new Response(await answer.blob(), { headers }));
}

/** The overview: always from the service; only when it cannot be reached as last kept, marked with when that was. */
async function overview(request: Request, path: string): Promise<Response> {
  try {
    const fresh = await fetch(request);
    if (fresh.ok) await keep(path, fresh.clone());
    return fresh;
  } catch (problem) {
    const kept = await (await caches.open(keptCache)).match(path);
    if (kept === undefined) throw problem;
    return kept;
  }
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (request.mode === 'navigate' && !url.pathname.startsWith('/api/')) event.respondWith(shell(request));
  else if (url.pathname.startsWith('/assets/') || /^\/mark[^/]*$/.test(url.pathname)) event.respondWith(asset(request));
  else if (keptPaths.includes(url.pathname)) event.respondWith(overview(request, url.pathname));
});
