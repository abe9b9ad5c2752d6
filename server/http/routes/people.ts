// People and tokens of machines; the manager's business.
import { nanoid } from 'nanoid';
import { z } from 'zod';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import {
  createdTokenSchema,
  newPersonSchema,
  newTokenSchema,
  personPatchSchema,
  personSchema,
  tokenSchema,
} from '../../../shared/api/session.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import { hashPassword } from '../../people/passwords.ts';
import { hashSecret, makeSecret } from '../../people/secrets.ts';
import type { Store } from '../../store/store.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { viewPerson } from './session.ts';

const idParams = z.object({ id: idSchema });

export function peopleRoutes(app: Routes, { store, clock, telling, hub }: HttpParts): void {
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
        throw new Problem('conflict', 'Somebody has this name already: add a surname.');
      const passwordHash = await hashPassword(body.password);
      const person = { id: nanoid(10), name: body.name, role: body.role, passwordHash, createdMs: clock.nowMs() };
      await store.people.add(person);
      return reply.code(201).send(viewPerson(person));
    },
  );
  app.patch(
    '/people/:id',
    {
      config: { role: 'manager' },
      schema: { params: idParams, body: personPatchSchema, response: { 200: personSchema } },
    },
    async ({ params, body }) => {
      if (body.role !== undefined && body.role !== 'manager') await keepOneManager(store, params.id);
      const passwordHash = body.password === undefined ? undefined : await hashPassword(body.password);
      await store.people.update(params.id, {
        ...(body.role && { role: body.role }),
        ...(passwordHash && { passwordHash }),
      });
      // A new password or a smaller role counts at once, everywhere.
      await store.people.endSessionsOf(params.id);
      hub.letGo(params.id);
      await telling.targetsChanged();
      const person = await store.people.get(params.id);
      if (person === null) throw new Problem('not-found', 'There is no such person.');
      return viewPerson(person);
    },
  );
  app.delete(
    '/people/:id',
    { config: { role: 'manager' }, schema: { params: idParams, response: { 204: z.null() } } },
    async ({ params }, reply) => {
      await keepOneManager(store, params.id);
      if (!(await store.people.remove(params.id))) throw new Problem('not-found', 'There is no such person.');
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
      if (!(await store.people.removeToken(params.id))) throw new Problem('not-found', 'There is no such token.');
      hub.letGo(params.id);
      return reply.code(204).send(null);
    },
  );
}

async function keepOneManager(store: Store, leavingId: string): Promise<void> {
  const others = (await store.people.list()).filter(({ id, role }) => role === 'manager' && id !== leavingId);
  if (others.length === 0) throw new Problem('conflict', 'This is the last manager: make another one first.');
}
