// First set-up, sign-in, sign-out, who am I.
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { sessionSchema, setupBodySchema, signInBodySchema } from '../../../shared/api/session.ts';
import { utcText } from '../../../shared/units.ts';
import { SESSION_MS } from '../../people/sign-in.ts';
import type { Person } from '../../store/store.ts';
import { SESSION_COOKIE } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { preferredLanguage } from '../language-of.ts';

export function viewPerson({ id, name, role, createdMs, passwordHash: _, ...details }: Person) {
  return { id, name, role, createdAt: utcText(createdMs), ...details };
}

export function sessionRoutes(app: Routes, { signIn, store, site, telling, isSecure, isDemo }: HttpParts): void {
  const cookie = { httpOnly: true, sameSite: 'lax', secure: isSecure, path: '/', maxAge: SESSION_MS / 1000 } as const;
  const describe = async (person: Person | null) => ({
    person: person === null ? null : viewPerson(person),
    needsSetup: person === null && (await store.people.list()).length === 0,
    siteName: site.current().siteName,
    zone: site.current().zone,
    temperatureUnit: site.current().temperatureUnit,
    demo: isDemo,
  });
  // Who has said nothing else is told of alarms in the language in which they first signed in.
  const withLanguage = async (person: Person, request: FastifyRequest): Promise<Person> => {
    const language = person.language ?? preferredLanguage(request);
    if (language !== person.language) await store.people.setDetails(person.id, { language });
    return { ...person, language };
  };
  // Guessing has to stay slow even for many addresses: a password is checked at most ten times a minute for each.
  const slow = { rateLimit: { max: 10, timeWindow: '1 minute' } };

  app.post(
    '/setup',
    { config: { role: 'public', ...slow }, schema: { body: setupBodySchema, response: { 201: sessionSchema } } },
    async (request, reply) => {
      const { code, name, password } = request.body;
      const { person, session } = await signIn.setUp(code, name, password);
      // The first manager can be told from now on.
      await telling.targetsChanged();
      return reply
        .setCookie(SESSION_COOKIE, session, cookie)
        .code(201)
        .send(await describe(await withLanguage(person, request)));
    },
  );
  app.post(
    '/session',
    { config: { role: 'public', ...slow }, schema: { body: signInBodySchema, response: { 201: sessionSchema } } },
    async (request, reply) => {
      const { person, session } = await signIn.signIn(request.body.name, request.body.password);
      return reply
        .setCookie(SESSION_COOKIE, session, cookie)
        .code(201)
        .send(await describe(await withLanguage(person, request)));
    },
  );
  app.get('/session', { config: { role: 'public' }, schema: { response: { 200: sessionSchema } } }, async ({ actor }) =>
    describe(actor?.personId ? await store.people.get(actor.personId) : null),
  );
  app.delete(
    '/session',
    { config: { role: 'public' }, schema: { response: { 204: z.null() } } },
    async ({ actor }, reply) => {
      if (actor?.session) await signIn.signOut(actor.session);
      return reply.clearCookie(SESSION_COOKIE, { path: '/' }).code(204).send(null);
    },
  );
}
