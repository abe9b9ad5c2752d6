// Phones of the signed-in person: adding, trying, removing, those that were lost, and what phones say of the notices they have shown.
import { nanoid } from 'nanoid';
import { z } from 'zod';
import { idSchema } from '../../../shared/api/common.ts';
import {
  deliveryResultSchema,
  newPhoneSchema,
  type PhonesView,
  type PhoneView,
  phoneSchema,
  phonesSchema,
  receiptSchema,
} from '../../../shared/api/telling.ts';
import { sayFinding } from '../../../shared/finding.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import type { SharedWords } from '../../../shared/words/shared-words.ts';
import type { LostPhone, Phone } from '../../store/store.ts';
import { timeText } from '../../views/alarm-view.ts';
import { viewTest } from '../../views/test-view.ts';
import { personIdOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';

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
  const { pushKey: keyNow, publicUrl } = telling;
  app.get('/phones', { config: own, schema: { response: { 200: phonesSchema } } }, async (request) => {
    const words = wordsFor(request);
    return {
      items: (await store.phones.ofPerson(personIdOf(request))).map((phone) => viewPhone(phone, keyNow, words)),
      lost: (await store.phones.lost(personIdOf(request))).map((phone) => viewLost(phone, words)),
      pushKey: keyNow,
      publicUrl,
    };
  });
  app.post(
    '/phones',
    { config: own, schema: { body: newPhoneSchema, response: { 201: phoneSchema } } },
    async (request, reply) => {
      const { name, subscription, pushKey = keyNow } = request.body;
      const { endpoint, keys } = subscription;
      const personId = personIdOf(request);
      const row = { id: nanoid(10), personId, name, endpoint, ...keys, pushKey, createdMs: clock.nowMs() };
      const phone = await store.phones.put(row);
      await telling.targetsChanged();
      return reply.code(201).send(viewPhone(phone, keyNow, wordsFor(request)));
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
      const tested = await telling.test({ channel: 'web-push', targetId: id, personId });
      return viewTest(tested, wordsFor(request));
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

function viewPhone(phone: Phone, keyNow: string, words: SharedWords): PhoneView {
  const { id, name, createdMs, lastResult, lastResultMs, confirmedMs, pushKey } = phone;
  return {
    ...{ id, name, createdAt: utcText(createdMs) },
    lastResult: lastResult === null ? null : sayFinding(lastResult, words),
    lastResultAt: timeText(lastResultMs),
    confirmedAt: timeText(confirmedMs),
    hasOldKey: pushKey !== null && pushKey !== keyNow,
  };
}

function viewLost({ id, name, reason, lostMs }: LostPhone, words: SharedWords): PhonesView['lost'][number] {
  return { id, name, reason: sayFinding(reason, words), lostAt: utcText(lostMs) };
}
