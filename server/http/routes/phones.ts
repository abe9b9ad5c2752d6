// Phones of the signed-in person: adding, trying, removing, those that were lost, and what phones say of the notices they have shown.
import { nanoid } from 'nanoid';
import { z } from 'zod';
import { idSchema } from '../../../shared/api/common.ts';
import {
  deliveryResultSchema,
  newPhoneSchema,
  phoneSchema,
  phonesSchema,
  receiptSchema,
} from '../../../shared/api/telling.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import type { LostPhone, Phone } from '../../store/store.ts';
import { timeText } from '../../views/alarm-view.ts';
import { personIdOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const idParams = z.object({ id: idSchema });
const own = { role: 'viewer', peopleOnly: true } as const;

export function phoneRoutes(app: Routes, parts: HttpParts): void {
  const { store, clock, telling } = parts;
  const owned = async (id: string, personId: string): Promise<Phone> => {
    const phone = await store.phones.get(id);
    if (phone === null || phone.personId !== personId)
      throw new Problem('not-found', ({ problems }) => problems.noSuchPhone);
    return phone;
  };
  const view = (phone: Phone) => viewPhone(phone, telling.pushKey);
  app.get('/phones', { config: own, schema: { response: { 200: phonesSchema } } }, async (request) => ({
    items: (await store.phones.ofPerson(personIdOf(request))).map(view),
    lost: (await store.phones.lost(personIdOf(request))).map(viewLost),
    pushKey: telling.pushKey,
    publicUrl: telling.publicUrl,
  }));
  app.post(
    '/phones',
    { config: own, schema: { body: newPhoneSchema, response: { 201: phoneSchema } } },
    async (request, reply) => {
      const { name, subscription, pushKey = telling.pushKey } = request.body;
      const { endpoint, keys } = subscription;
      const personId = personIdOf(request);
      const row = { id: nanoid(10), personId, name, endpoint, ...keys, pushKey, createdMs: clock.nowMs() };
      const phone = await store.phones.put(row);
      await telling.targetsChanged();
      return reply.code(201).send(view(phone));
    },
  );
  app.delete(
    '/phones/:id',
    { config: own, schema: { params: idParams, response: { 204: z.null() } } },
    async (request, reply) => {
      const phone = await owned(request.params.id, personIdOf(request));
      await store.phones.remove(phone.id);
      await telling.targetsChanged();
      return reply.code(204).send(null);
    },
  );
  app.post(
    '/phones/:id/test',
    { config: own, schema: { params: idParams, response: { 200: deliveryResultSchema } } },
    async (request) => {
      const { id, personId } = await owned(request.params.id, personIdOf(request));
      const { atMs, ...result } = await telling.test({ channel: 'web-push', targetId: id, personId });
      return { ...result, at: utcText(atMs) };
    },
  );
  lostPhoneRoutes(app, parts);
}

function lostPhoneRoutes(app: Routes, { store, telling }: HttpParts): void {
  app.delete(
    '/phones/lost/:id',
    { config: own, schema: { params: idParams, response: { 204: z.null() } } },
    async (request, reply) => {
      if (!(await store.phones.forgetLost(request.params.id, personIdOf(request))))
        throw new Problem('not-found', ({ problems }) => problems.noSuchPhone);
      return reply.code(204).send(null);
    },
  );
  // Sent by the worker of a page whose person may be signed out: the secret of the notice is what it has.
  app.post(
    '/receipts',
    {
      config: { role: 'public', rateLimit: { max: 300, timeWindow: '1 minute' } },
      schema: { body: receiptSchema, response: { 204: z.null() } },
    },
    async ({ body }, reply) => {
      if (!(await telling.confirm(body.noticeId, body.secret)))
        throw new Problem('not-allowed', ({ problems }) => problems.wrongReceipt);
      return reply.code(204).send(null);
    },
  );
}

function viewPhone({ id, name, createdMs, lastResult, lastResultMs, confirmedMs, pushKey }: Phone, nowKey: string) {
  return {
    ...{ id, name, createdAt: utcText(createdMs), lastResult, lastResultAt: timeText(lastResultMs) },
    ...{ confirmedAt: timeText(confirmedMs), hasOldKey: pushKey !== null && pushKey !== nowKey },
  };
}

function viewLost({ id, name, reason, lostMs }: LostPhone) {
  return { id, name, reason, lostAt: utcText(lostMs) };
}
