// Profiles and their versions.
import { z } from 'zod';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import {
  newProfileSchema,
  newProfileVersionSchema,
  profileCheckBodySchema,
  profileSchema,
  profileVerdictSchema,
} from '../../../shared/api/profiles.ts';
import type { ProfileDocument } from '../../../shared/healing/profile.ts';
import { findProfileFaults } from '../../../shared/healing/profile-faults.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import type { ProfileVersion } from '../../store/store.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const idParams = z.object({ id: idSchema });

export function profileRoutes(app: Routes, parts: HttpParts): void {
  readingRoutes(app, parts);
  writingRoutes(app, parts);
}

function readingRoutes(app: Routes, { store }: HttpParts): void {
  app.get(
    '/profiles',
    { config: { role: 'viewer' }, schema: { response: { 200: listOf(profileSchema) } } },
    async () => ({
      items: (await store.profiles.list()).map(viewProfile),
      nextCursor: null,
    }),
  );
  app.get(
    '/profiles/:id',
    {
      config: { role: 'viewer' },
      schema: {
        params: idParams,
        querystring: z.object({ version: z.coerce.number().int().min(1).optional() }),
        response: { 200: profileSchema },
      },
    },
    async ({ params, query }) => {
      const profile = await store.profiles.get(params.id, query.version);
      if (profile === null) throw new Problem('not-found', 'There is no such profile.');
      return viewProfile(profile);
    },
  );
  app.get(
    '/profiles/:id/history',
    { config: { role: 'viewer' }, schema: { params: idParams, response: { 200: listOf(profileSchema) } } },
    async ({ params }) => {
      const versions = await store.profiles.versions(params.id);
      if (versions.length === 0) throw new Problem('not-found', 'There is no such profile.');
      return { items: versions.map(viewProfile), nextCursor: null };
    },
  );
}

function writingRoutes(app: Routes, { store, clock }: HttpParts): void {
  app.post(
    '/profiles',
    { config: { role: 'manager' }, schema: { body: newProfileSchema, response: { 201: profileSchema } } },
    async (request, reply) => {
      const { id, document } = request.body;
      if ((await store.profiles.get(id)) !== null)
        throw new Problem('conflict', 'A profile has this name already: choose another.', {
          faults: [{ where: '/name', reason: 'A profile has this name already: choose another.' }],
        });
      const version = await store.profiles.addVersion(id, checked(document), clock.nowMs(), actorOf(request).name);
      return reply.code(201).send(viewProfile(version));
    },
  );
  app.post(
    '/profiles/check',
    {
      config: { role: 'viewer' },
      schema: { body: profileCheckBodySchema, response: { 200: profileVerdictSchema } },
    },
    async ({ body }) => {
      const { document, faults } = findProfileFaults(body.document);
      return { document, faults: [...faults] };
    },
  );
  app.post(
    '/profiles/:id/versions',
    {
      config: { role: 'manager' },
      schema: { params: idParams, body: newProfileVersionSchema, response: { 201: profileSchema } },
    },
    async (request, reply) => {
      const { id } = request.params;
      if ((await store.profiles.get(id)) === null) throw new Problem('not-found', 'There is no such profile.');
      const document = checked(request.body.document);
      const version = await store.profiles.addVersion(id, document, clock.nowMs(), actorOf(request).name);
      return reply.code(201).send(viewProfile(version));
    },
  );
}

function checked(candidate: unknown): ProfileDocument {
  const { document, faults } = findProfileFaults(candidate);
  if (document !== null && faults.length === 0) return document;
  const text = faults.map(({ where, reason }) => `${where || '/'}: ${reason}`).join('; ');
  throw new Problem('bad-input', `The profile cannot be used: ${text}`, { faults });
}

function viewProfile({ id, version, createdMs, createdBy, document }: ProfileVersion) {
  return { id, version, createdAt: utcText(createdMs), createdBy, document };
}
