// The channels of the site: how alerts leave it.
import type { FastifyRequest } from 'fastify';
import { nanoid } from 'nanoid';
import { type Channels, channelsChangeSchema, channelsViewSchema } from '../../../shared/api/channels.ts';
import { channelTestSchema, deliveryResultSchema } from '../../../shared/api/telling.ts';
import { Problem } from '../../../shared/problem.ts';
import { changeChannels, viewChannels } from '../../../shared/telling/change-channels.ts';
import { emailTarget, webhookTarget } from '../../../shared/telling/target-ids.ts';
import { utcText } from '../../../shared/units.ts';
import { actorOf, personIdOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

export function channelRoutes(app: Routes, parts: HttpParts): void {
  const { telling } = parts;
  testRoute(app, parts);
  const manager = { role: 'manager' } as const;
  app.get('/channels', { config: manager, schema: { response: { 200: channelsViewSchema } } }, async () =>
    viewChannels(telling.channels()),
  );
  app.put(
    '/channels',
    { config: manager, schema: { body: channelsChangeSchema, response: { 200: channelsViewSchema } } },
    async ({ body }) => {
      const changed = changeChannels(telling.channels(), body, () => nanoid(10));
      if ('faults' in changed) throw refuse(changed.faults);
      await telling.changeChannels(changed.channels);
      return viewChannels(changed.channels);
    },
  );
}

/** Everybody may try their own e-mail; webhooks are the manager's. */
function testRoute(app: Routes, { telling }: HttpParts): void {
  app.post(
    '/channels/test',
    {
      config: { role: 'viewer', peopleOnly: true, rateLimit: { max: 10, timeWindow: '1 minute' } },
      schema: { body: channelTestSchema, response: { 200: deliveryResultSchema } },
    },
    async (request) => {
      const personId = personIdOf(request);
      const target =
        request.body.channel === 'email'
          ? ({ channel: 'email', targetId: emailTarget(personId), personId } as const)
          : webhookTest(request.body.webhookId, request, telling.channels());
      const { atMs, ...result } = await telling.test(target);
      return { ...result, at: utcText(atMs) };
    },
  );
}

function webhookTest(webhookId: string, request: FastifyRequest, { webhooks }: Channels) {
  const { role, personId } = actorOf(request);
  if (role !== 'manager') throw new Problem('not-allowed', (say) => say.problems.roleTooLow('manager', role));
  const webhook = webhooks.find(({ id }) => id === webhookId);
  if (webhook === undefined) throw new Problem('not-found', (say) => say.problems.noSuchWebhook);
  const whom = webhook.audience === 'site' ? null : personId;
  return { channel: 'webhook', targetId: webhookTarget(webhookId, whom), personId: whom } as const;
}

function refuse(faults: Problem['faults']): Problem {
  const [first] = faults;
  return new Problem('bad-input', (words) => `${first?.where}: ${first?.reason(words)}`, { faults });
}
