// Who is signed in, and what their role may do: viewers see, crew act, managers set up.
import { computed, signal } from '@preact/signals';
import type { Session } from '../shared/api/session.ts';
import { ApiProblem, whenSignedOut } from './api.ts';
import { calls } from './calls.ts';
import { forgetLanguage, readIn } from './reader-language.ts';
import { temperatureUnit } from './temperature-unit.ts';

/** Undefined until the service has answered once. */
export const session = signal<Session | undefined>(undefined);
export const sessionProblem = signal<ApiProblem | undefined>(undefined);

export const person = computed(() => session.value?.person ?? null);
/** The site's time zone; UTC until it is known. */
export const zone = computed(() => session.value?.zone ?? 'UTC');
/** May acknowledge, log, answer checks, and steer batches. */
export const mayAct = computed(() => person.value !== null && person.value.role !== 'viewer');
/** May set up chambers, probes, people and channels. */
export const maySetUp = computed(() => person.value?.role === 'manager');

const keptCaches = 'takewell-kept';

/** Asks who is signed in. */
export async function loadSession(): Promise<void> {
  try {
    const { body } = await calls.session();
    session.value = body;
    takeReader(body);
    sessionProblem.value = undefined;
  } catch (problem) {
    if (!(problem instanceof ApiProblem)) throw problem;
    sessionProblem.value = problem;
  }
}

/** The language and the unit of the person, else those of browser and site. */
function takeReader({ person: reader, temperatureUnit: ofSite }: Session): void {
  temperatureUnit.value = reader?.temperatureUnit ?? ofSite;
  if (reader?.language != null) readIn(reader.language);
}

function forgetPerson(): void {
  if (session.value !== undefined) session.value = { ...session.value, person: null };
}

/** Ends the session and forgets what the offline shell kept of it. */
export async function signOut(): Promise<void> {
  await calls.signOut();
  if (person.value?.language != null) forgetLanguage();
  if ('caches' in globalThis) await caches.delete(keptCaches);
  forgetPerson();
}

/** From now on a "not signed in" answer leads to the sign-in page; the address stays, so that one comes back to it. */
export function watchSession(): void {
  whenSignedOut(forgetPerson);
}
