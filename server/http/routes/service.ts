// The service itself: stream of events, health, metrics.
import { healthSchema } from '../../../shared/api/health.ts';
import { Problem } from '../../../shared/problem.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';

export function serviceRoutes(app: Routes, { hub, health, metrics }: HttpParts): void {
  // No HEAD: it would be a stream that never ends and never says anything.
  app.get('/stream', { config: { role: 'viewer' }, exposeHeadRoute: false }, async (request, reply) => {
    const { id } = actorOf(request);
    reply.hijack();
    hub.add(reply.raw, id);
  });
  app.get(
    '/health',
    { config: { role: 'public' }, schema: { response: { 200: healthSchema, 503: healthSchema } } },
    async (request, reply) => {
      const state = await health(wordsFor(request));
      return reply.code(state.ready ? 200 : 503).send(state);
    },
  );
  app.get('/metrics', { config: { role: 'public' } }, async (request, reply) => {
    const isLocal = ['127.0.0.1', '::1', '::ffff:127.0.0.1'].includes(request.ip);
    if (request.actor === null && !isLocal)
      throw new Problem('not-signed-in', ({ problems }) => problems.metricsNeedToken);
    return reply.type('text/plain; version=0.0.4; charset=utf-8').send(await metrics());
  });
}
