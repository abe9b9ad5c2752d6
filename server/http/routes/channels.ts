// The channels of the site: how alerts leave it.
import type { FastifyRequest } from 'fastify';
import { nanoid } from 'nanoid';
import { type Channels, channelsChangeSchema, channelsViewSchema } from '../../../shared/api/channels.ts';
import {
  type ChannelTest,
  channelTestSchema,
  type DeliveryResult,
  deliveryResultSchema,
} from '../../../shared/api/telling.ts';
import { Problem } from '../../../shared/problem.ts';
import { changeChannels, viewChannels } from '../../../shared/telling/change-channels.ts';
import { emailTarget, webhookTarget } from '../../../shared/telling/target-ids.ts';
import { utcText } from '../../../shared/units.ts';
import type { TrialResult } from '../../trials.ts';
import { viewTest } from '../../views/test-view.ts';
import { actorOf, personIdOf } from '../actor.ts';
import type { HttpParts, Routes, Telling } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';

type TestTarget = Parameters<Telling['test']>[0];

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

/** Everybody may try their own e-mail; the rest is the manager's. */
function testRoute(app: Routes, { telling, trials }: HttpParts): void {
  app.post(
    '/channels/test',
    {
      config: { role: 'viewer', peopleOnly: true, rateLimit: { max: 10, timeWindow: '1 minute' } },
      schema: { body: channelTestSchema, response: { 200: deliveryResultSchema } },
    },
    async (request) => {
      const { channel } = request.body;
      if (channel !== 'email') managerOnly(request);
      const words = wordsFor(request);
      if (channel === 'siren' || channel === 'heartbeat') return viewTrial(await trials[channel](words));
      return viewTest(await telling.test(targetOf(request.body, personIdOf(request), telling.channels())), words);
    },
  );
}

function viewTrial({ atMs, ...result }: TrialResult): DeliveryResult {
  return { ...result, at: utcText(atMs) };
}

function managerOnly(request: FastifyRequest): void {
  const { role } = actorOf(request);
  if (role !== 'manager') throw new Problem('not-allowed', (say) => say.problems.roleTooLow('manager', role));
}

type ToTarget = Extract<ChannelTest, { channel: 'email' | 'webhook' }>;

function targetOf(test: ToTarget, personId: string, { webhooks }: Channels): TestTarget {
  if (test.channel === 'email') return { channel: 'email', targetId: emailTarget(personId), personId };
  const webhook = webhooks.find(({ id }) => id === test.webhookId);
  if (webhook === undefined) throw new Problem('not-found', (say) => say.problems.noSuchWebhook);
  const whom = webhook.audience === 'site' ? null : personId;
  return { channel: 'webhook', targetId: webhookTarget(webhook.id, whom), personId: whom };
}

function refuse(faults: Problem['faults']): Problem {
  const [first] = faults;
  return new Problem('bad-input', (words) => `${first?.where}: ${first?.reason(words)}`, { faults });
}
