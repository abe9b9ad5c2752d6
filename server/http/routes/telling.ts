// Phones of the signed-in person, and settings of the site.
import { nanoid } from 'nanoid';
import { z } from 'zod';
import { idSchema } from '../../../shared/api/common.ts';
import {
  deliveryResultSchema,
  newPhoneSchema,
  phoneSchema,
  phonesSchema,
  siteSettingsSchema,
} from '../../../shared/api/telling.ts';
import { validZone } from '../../../shared/healing/batch-clock.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import type { Phone } from '../../store/store.ts';
import { timeText } from '../../views/alarm-view.ts';
import { personIdOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const idParams = z.object({ id: idSchema });

export function tellingRoutes(app: Routes, parts: HttpParts): void {
  phoneRoutes(app, parts);
  settingRoutes(app, parts);
}

function phoneRoutes(app: Routes, { store, clock, telling }: HttpParts): void {
  const own = { role: 'viewer', peopleOnly: true } as const;
  const owned = async (id: string, personId: string): Promise<Phone> => {
    const phone = await store.phones.get(id);
    if (phone === null || phone.personId !== personId)
      throw new Problem('not-found', ({ problems }) => problems.noSuchPhone);
    return phone;
  };
  app.get('/phones', { config: own, schema: { response: { 200: phonesSchema } } }, async (request) => ({
    items: (await store.phones.ofPerson(personIdOf(request))).map(viewPhone),
    pushKey: telling.pushKey,
  }));
  app.post(
    '/phones',
    { config: own, schema: { body: newPhoneSchema, response: { 201: phoneSchema } } },
    async (request, reply) => {
      const { name, subscription } = request.body;
      const row = {
        id: nanoid(10),
        personId: personIdOf(request),
        name,
        endpoint: subscription.endpoint,
        ...subscription.keys,
      };
      const phone = await store.phones.put({ ...row, createdMs: clock.nowMs(), lastResult: null, lastResultMs: null });
      await telling.targetsChanged();
      return reply.code(201).send(viewPhone(phone));
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
    async (request) => telling.testPhone(await owned(request.params.id, personIdOf(request))),
  );
}

function settingRoutes(app: Routes, { site, followMappings }: HttpParts): void {
  app.get('/settings', { config: { role: 'viewer' }, schema: { response: { 200: siteSettingsSchema } } }, async () =>
    site.current(),
  );
  app.put(
    '/settings',
    { config: { role: 'manager' }, schema: { body: siteSettingsSchema, response: { 200: siteSettingsSchema } } },
    async ({ body }) => {
      if (!validZone(body.zone)) {
        throw new Problem('bad-input', ({ problems }) => problems.unknownZone(body.zone));
      }
      await site.change(body);
      await followMappings();
      return site.current();
    },
  );
}

function viewPhone({ id, name, createdMs, lastResult, lastResultMs }: Phone) {
  return { id, name, createdAt: utcText(createdMs), lastResult, lastResultAt: timeText(lastResultMs) };
}
