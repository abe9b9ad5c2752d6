// People and tokens of machines; the manager's business.
import { nanoid } from 'nanoid';
import { z } from 'zod';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import { reachSchema } from '../../../shared/api/reach.ts';
import {
  createdTokenSchema,
  newPersonSchema,
  newTokenSchema,
  ownPatchSchema,
  personPatchSchema,
  personSchema,
  tokenSchema,
} from '../../../shared/api/session.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import { hashPassword } from '../../people/passwords.ts';
import { withoutDetails } from '../../people/person-details.ts';
import { hashSecret, makeSecret } from '../../people/secrets.ts';
import type { Person, Store } from '../../store/store.ts';
import { viewReach } from '../../views/reach-view.ts';
import { personIdOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';
import { viewPerson } from './session.ts';

const idParams = z.object({ id: idSchema });

export function peopleRoutes(app: Routes, { store, clock, telling, hub, reach }: HttpParts): void {
  app.get(
    '/people',
    { config: { role: 'manager' }, schema: { response: { 200: listOf(personSchema) } } },
    async () => ({
      items: (await store.people.list()).map(viewPerson),
      nextCursor: null,
    }),
  );
  app.post(
    '/people',
    { config: { role: 'manager' }, schema: { body: newPersonSchema, response: { 201: personSchema } } },
    async ({ body }, reply) => {
      if ((await store.people.byName(body.name)) !== null)
        throw new Problem('conflict', ({ problems }) => problems.nameTaken);
      const passwordHash = await hashPassword(body.password);
      const person = { id: nanoid(10), name: body.name, role: body.role, passwordHash, createdMs: clock.nowMs() };
      await store.people.add(person);
      await telling.targetsChanged();
      return reply.code(201).send(viewPerson(withoutDetails(person)));
    },
  );
  app.get(
    '/people/me/reach',
    { config: { role: 'viewer', peopleOnly: true }, schema: { response: { 200: reachSchema } } },
    async (request) => {
      const id = personIdOf(request);
      const [own, phones] = [await reach.ofPerson(id), await store.phones.ofPerson(id)];
      if (own === null) throw new Problem('not-found', ({ problems }) => problems.noSuchPerson);
      return viewReach(own, { phones, webhooks: telling.channels().webhooks }, wordsFor(request));
    },
  );
  app.patch(
    '/people/me',
    {
      config: { role: 'viewer', peopleOnly: true },
      schema: { body: ownPatchSchema, response: { 200: personSchema } },
    },
    async (request) => viewPerson(await changeDetails(store, telling, personIdOf(request), request.body)),
  );
  app.patch(
    '/people/:id',
    {
      config: { role: 'manager' },
      schema: { params: idParams, body: personPatchSchema, response: { 200: personSchema } },
    },
    async ({ params, body }) => {
      const { role, password, ...details } = body;
      if (role !== undefined && role !== 'manager') await keepOneManager(store, params.id);
      const person = await changeDetails(store, telling, params.id, details);
      if (role === undefined && password === undefined) return viewPerson(person);
      const passwordHash = password === undefined ? undefined : await hashPassword(password);
      await store.people.update(params.id, { ...(role && { role }), ...(passwordHash && { passwordHash }) });
      // A new password or a smaller role counts at once, everywhere.
      await store.people.endSessionsOf(params.id);
      hub.letGo(params.id);
      await telling.targetsChanged();
      return viewPerson({ ...person, role: role ?? person.role });
    },
  );
  app.delete(
    '/people/:id',
    { config: { role: 'manager' }, schema: { params: idParams, response: { 204: z.null() } } },
    async ({ params }, reply) => {
      await keepOneManager(store, params.id);
      if (!(await store.people.remove(params.id)))
        throw new Problem('not-found', ({ problems }) => problems.noSuchPerson);
      hub.letGo(params.id);
      await telling.targetsChanged();
      return reply.code(204).send(null);
    },
  );
  tokenRoutes(app, { store, clock, hub });
}

function tokenRoutes(app: Routes, { store, clock, hub }: Pick<HttpParts, 'store' | 'clock' | 'hub'>): void {
  app.get('/tokens', { config: { role: 'manager' }, schema: { response: { 200: listOf(tokenSchema) } } }, async () => ({
    items: (await store.people.tokens()).map(({ createdMs, ...rest }) => ({ ...rest, createdAt: utcText(createdMs) })),
    nextCursor: null,
  }));
  app.post(
    '/tokens',
    { config: { role: 'manager' }, schema: { body: newTokenSchema, response: { 201: createdTokenSchema } } },
    async ({ body }, reply) => {
      const token = makeSecret();
      const row = { id: nanoid(10), name: body.name, scope: body.scope, createdMs: clock.nowMs() };
      await store.people.addToken(row, hashSecret(token));
      const { createdMs, ...rest } = row;
      return reply.code(201).send({ ...rest, createdAt: utcText(createdMs), token });
    },
  );
  app.delete(
    '/tokens/:id',
    { config: { role: 'manager' }, schema: { params: idParams, response: { 204: z.null() } } },
    async ({ params }, reply) => {
      if (!(await store.people.removeToken(params.id)))
        throw new Problem('not-found', ({ problems }) => problems.noSuchToken);
      hub.letGo(params.id);
      return reply.code(204).send(null);
    },
  );
}

/** The person after the change. Problems: `not-found`; `bad-input` when only one end of the quiet hours would be known. */
async function changeDetails(
  store: Store,
  telling: HttpParts['telling'],
  id: string,
  named: z.infer<typeof ownPatchSchema>,
): Promise<Person> {
  const before = await store.people.get(id);
  if (before === null) throw new Problem('not-found', ({ problems }) => problems.noSuchPerson);
  const details = Object.fromEntries(Object.entries(named).filter(([, value]) => value !== undefined));
  const person = { ...before, ...details };
  if ((person.quietFrom === null) !== (person.quietTo === null))
    throw new Problem('bad-input', ({ problems }) => problems.quietHoursBoth);
  await store.people.setDetails(id, details);
  await telling.targetsChanged();
  return person;
}

async function keepOneManager(store: Store, leavingId: string): Promise<void> {
  const others = (await store.people.list()).filter(({ id, role }) => role === 'manager' && id !== leavingId);
  if (others.length === 0) throw new Problem('conflict', ({ problems }) => problems.lastManager);
}
