// Alerts when the page is not open, and the last known overview when the service cannot be reached.
// Every push shows a notice: browsers take the right away from a worker that stays silent.
import { chooseLanguage, isLanguage, type Language } from '../shared/languages.ts';
import { type AlertWords, alertWords } from './alert-words.ts';
import { type PushMessage, readPush } from './push-message.ts';

declare const self: ServiceWorkerGlobalScope;

/** The files of the built page without its words, put in by the build: a new version is another list, and so another worker. */
declare const SHELL_FILES: readonly string[];
/** The files of the words of each language. */
declare const LANGUAGE_FILES: Readonly<Record<Language, readonly string[]>>;
declare const SHELL_VERSION: string;

const shellPrefix = 'takewell-shell';
const shellCache = `${shellPrefix}-${SHELL_VERSION}`;
const keptCache = 'takewell-kept';
const keptPaths = ['/api/v1/session', '/api/v1/chambers', '/api/v1/probes'];
const languagePath = '/reader-language';
/** By language; named once, since the build puts the list in wherever it is named. */
const wordFiles = LANGUAGE_FILES;
const keptAtHeader = 'x-takewell-kept-at';
const shellTimeOutMs = 5_000;

function optionsOf(message: PushMessage): NotificationOptions & { actions?: object[]; renotify?: boolean } {
  const say = alertWords[message.language];
  const open = { action: 'open', title: say.open };
  const acknowledge = { action: 'acknowledge', title: say.acknowledge };
  return {
    body: message.body,
    lang: message.language,
    tag: message.tag,
    icon: '/mark-192.png',
    badge: '/mark-192.png',
    data: { path: message.path, alarmId: message.alarmId, token: message.token },
    // The same alarm told again replaces its notice and sounds again; one that is over does not.
    renotify: message.isUrgent,
    requireInteraction: message.isUrgent,
    actions: message.canAcknowledge ? [acknowledge, open] : [open],
  };
}

self.addEventListener('push', (event) => {
  const message = readPush(event.data?.text() ?? '', self.location.origin, navigator.languages);
  event.waitUntil(show(message));
});

async function show(message: PushMessage): Promise<void> {
  await self.registration.showNotification(message.title, optionsOf(message));
  const { noticeId, receipt } = message;
  if (noticeId !== '' && receipt !== '') await send('/api/v1/receipts', { noticeId, secret: receipt });
}

/** null when the service cannot be reached: whoever asked says what that means. */
function send(path: string, body: object): Promise<Response | null> {
  const headers = { 'content-type': 'application/json' };
  return fetch(path, { method: 'POST', headers, body: JSON.stringify(body) }).catch(() => null);
}

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

interface Noticed {
  readonly path?: string;
  readonly alarmId?: string;
  readonly token?: string;
}

/** As whoever is signed in here; signed out, by what came in the push. */
async function acknowledge({ path = '/', alarmId = '', token = '' }: Noticed, say: AlertWords): Promise<void> {
  const signedIn = await send(`/api/v1/alarms/${encodeURIComponent(alarmId)}/acknowledge`, {});
  if (signedIn?.ok === true) return;
  const maySend = signedIn?.status === 401 || signedIn?.status === 403;
  const answer = maySend && token !== '' ? await send('/api/v1/acknowledge', { token }) : signedIn;
  if (answer?.ok === true) return;
  // Taken by somebody else, over, or out of reach: say so and lead to the place where it can be seen.
  await self.registration.showNotification(say.fallbackTitle, {
    body: await reasonOf(answer, say),
    tag: alarmId,
    data: { path, alarmId, token },
  });
}

/** What the service says, where it says more than no. */
async function reasonOf(answer: Response | null, say: AlertWords): Promise<string> {
  if (answer?.status !== 409) return say.acknowledgeFailed;
  const { detail }: { detail?: unknown } = await answer.json();
  return typeof detail === 'string' ? detail : say.acknowledgeFailed;
}

self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const noticed = (event.notification.data ?? {}) as Noticed;
  const isAcknowledge = event.action === 'acknowledge' && (noticed.alarmId ?? '') !== '';
  const say = alertWords[chooseLanguage([event.notification.lang, ...navigator.languages])];
  event.waitUntil(isAcknowledge ? acknowledge(noticed, say) : openPage(noticed.path ?? '/'));
});

/** Adds files to those of this version that are kept; all of them or none. */
async function addToShell(paths: readonly string[]): Promise<void> {
  const cache = await caches.open(shellCache);
  const kept = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
  await cache.addAll(paths.filter((path) => !kept.has(path)));
}

/** The language that a page last said its reader reads; what the browser asks for until one has. */
async function readerLanguage(): Promise<Language> {
  const said = await (await caches.open(keptCache)).match(languagePath);
  return chooseLanguage([...(said === undefined ? [] : [await said.text()]), ...navigator.languages]);
}

/** Page and files of one version together, in the reader's language: a page that is kept always finds its own files. */
async function keepShell(): Promise<void> {
  await addToShell(['/', ...SHELL_FILES, ...wordFiles[await readerLanguage()]]);
  await self.skipWaiting();
}

/** Keeps the words of another language too, and from the next version on those in place of the others. */
async function keepWords(language: Language): Promise<void> {
  await (await caches.open(keptCache)).put(languagePath, new Response(language));
  await addToShell(wordFiles[language]);
}

self.addEventListener('message', (event) => {
  const { language } = event.data as { language?: unknown };
  if (isLanguage(language)) event.waitUntil(keepWords(language));
});

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
  if (request.mode === 'navigate' && !/^\/(api|acknowledge)\//.test(url.pathname)) event.respondWith(shell(request));
  else if (url.pathname.startsWith('/assets/') || /^\/mark[^/]*$/.test(url.pathname)) event.respondWith(asset(request));
  else if (keptPaths.includes(url.pathname)) event.respondWith(overview(request, url.pathname));
});
