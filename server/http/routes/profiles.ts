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
import { Problem, sayFaults } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import type { Say } from '../../../shared/words/shared-words.ts';
import type { ProfileVersion } from '../../store/store.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';

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
      if (profile === null) throw new Problem('not-found', ({ problems }) => problems.noSuchProfile);
      return viewProfile(profile);
    },
  );
  app.get(
    '/profiles/:id/history',
    { config: { role: 'viewer' }, schema: { params: idParams, response: { 200: listOf(profileSchema) } } },
    async ({ params }) => {
      const versions = await store.profiles.versions(params.id);
      if (versions.length === 0) throw new Problem('not-found', ({ problems }) => problems.noSuchProfile);
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
        throw new Problem('conflict', ({ problems }) => problems.profileNameTaken, {
          faults: [{ where: '/name', reason: ({ problems }) => problems.profileNameTaken }],
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
    async (request) => {
      const { document, faults } = findProfileFaults(request.body.document);
      return { document, faults: sayFaults(faults, wordsFor(request)) };
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
      if ((await store.profiles.get(id)) === null)
        throw new Problem('not-found', ({ problems }) => problems.noSuchProfile);
      const document = checked(request.body.document);
      const version = await store.profiles.addVersion(id, document, clock.nowMs(), actorOf(request).name);
      return reply.code(201).send(viewProfile(version));
    },
  );
}

function checked(candidate: unknown): ProfileDocument {
  const { document, faults } = findProfileFaults(candidate);
  if (document !== null && faults.length === 0) return document;
  const say: Say = (words) =>
    words.problems.profileUnusable(faults.map(({ where, reason }) => `${where || '/'}: ${reason(words)}`).join('; '));
  throw new Problem('bad-input', say, { faults });
}

function viewProfile({ id, version, createdMs, createdBy, document }: ProfileVersion) {
  return { id, version, createdAt: utcText(createdMs), createdBy, document };
}
