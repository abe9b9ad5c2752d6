// Invitations: a manager makes, lists and withdraws them; the one who holds the secret looks at it and becomes a person by it.
import { z } from 'zod';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import {
  acceptedInvitationSchema,
  acceptInvitationSchema,
  createdInvitationSchema,
  invitationSchema,
  lookAtInvitationSchema,
  newInvitationSchema,
} from '../../../shared/api/invitations.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import { createInvitations } from '../../people/invitations.ts';
import type { Invitation } from '../../store/store.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const idParams = z.object({ id: idSchema });
/** Secrets cannot be guessed; this keeps somebody from having passwords hashed all day. */
const slow = { rateLimit: { max: 10, timeWindow: '1 minute' } };

function view({ id, name, role, createdMs, expiresMs }: Invitation) {
  return { id, name, role, createdAt: utcText(createdMs), expiresAt: utcText(expiresMs) };
}

export function invitationRoutes(app: Routes, { store, clock, telling }: HttpParts): void {
  const invitations = createInvitations({ store, clock });
  const manager = { role: 'manager' } as const;
  const anybody = { role: 'public', ...slow } as const;

  app.get('/invitations', { config: manager, schema: { response: { 200: listOf(invitationSchema) } } }, async () => ({
    items: (await store.invitations.list(clock.nowMs())).map(view),
    nextCursor: null,
  }));
  app.post(
    '/invitations',
    { config: manager, schema: { body: newInvitationSchema, response: { 201: createdInvitationSchema } } },
    async (request, reply) => {
      const madeBy = actorOf(request).personId;
      const { invitation, secret } = await invitations.make({ ...request.body, madeBy });
      return reply.code(201).send({ ...view(invitation), secret });
    },
  );
  app.delete(
    '/invitations/:id',
    { config: manager, schema: { params: idParams, response: { 204: z.null() } } },
    async ({ params }, reply) => {
      if (!(await store.invitations.remove(params.id)))
        throw new Problem('not-found', ({ problems }) => problems.invitationGone);
      return reply.code(204).send(null);
    },
  );
  // The secret comes in a body, never in an address: addresses end up in logs.
  app.post(
    '/invitations/look',
    { config: anybody, schema: { body: lookAtInvitationSchema, response: { 200: invitationSchema } } },
    async ({ body }) => view(await invitations.look(body.secret)),
  );
  app.post(
    '/invitations/accept',
    { config: anybody, schema: { body: acceptInvitationSchema, response: { 201: acceptedInvitationSchema } } },
    async ({ body }, reply) => {
      const { name, role } = await invitations.accept(body.secret, body.name, body.password);
      await telling.targetsChanged();
      return reply.code(201).send({ name, role });
    },
  );
}
