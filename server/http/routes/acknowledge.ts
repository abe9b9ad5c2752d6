// Acknowledging without signing in, by the secret of a link: from the page that it opens, and from a notice on a phone. Only a POST acts.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { Problem } from '../../../shared/problem.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';
import type { SeenLink } from '../../acknowledge-links.ts';
import { acknowledgePagePolicy, type PageOccasion, renderAcknowledgePage } from '../acknowledge-page.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { languageOf } from '../language-of.ts';

const tokenSchema = z.string().regex(/^[A-Za-z0-9_-]{43}$/);
/** Nobody guesses 256 bits; this keeps the attempt from being a burden. A nursery's phones share one address. */
const slow = { rateLimit: { max: 60, timeWindow: '1 minute' } };

/** For the worker of the page, whose person is signed out. */
export function acknowledgeRoutes(app: Routes, { links, rounds }: HttpParts): void {
  app.post(
    '/acknowledge',
    {
      config: { role: 'public', ...slow },
      schema: { body: z.object({ token: tokenSchema }), response: { 204: z.null() } },
    },
    async ({ body }, reply) => {
      await links.use(body.token, rounds);
      return reply.code(204).send(null);
    },
  );
}

interface PageRequest {
  readonly Params: { readonly token: string };
}

/** The page itself, beside the dashboard. */
export function acknowledgePages(app: FastifyInstance, parts: HttpParts): void {
  const { links, rounds } = parts;
  // A form without fields: its body is nothing that anybody reads.
  app.addContentTypeParser('application/x-www-form-urlencoded', { parseAs: 'string' }, (_request, _body, done) =>
    done(null, null),
  );
  const show = async (request: FastifyRequest<PageRequest>, reply: FastifyReply) => {
    const seen = await links.look(request.params.token);
    return answerPage(reply.code(seen === null ? 404 : 200), seen, occasionOf(request, seen, parts));
  };
  app.get<PageRequest>('/acknowledge/:token', { config: { role: 'public', ...slow }, schema: { hide: true } }, show);
  app.post<PageRequest>(
    '/acknowledge/:token',
    // The secret is in the address: whoever has it may send it from wherever the page was opened.
    { config: { role: 'public', ...slow, fromAnywhere: true }, schema: { hide: true } },
    async (request, reply) => {
      try {
        await links.use(request.params.token, rounds);
      } catch (problem) {
        // What hinders it is said by the page itself, from how the alarm stands now.
        if (!(problem instanceof Problem)) throw problem;
        return show(request, reply);
      }
      return reply.redirect(request.url, 303);
    },
  );
}

function answerPage(reply: FastifyReply, seen: SeenLink | null, occasion: PageOccasion): FastifyReply {
  return reply
    .header('content-security-policy', acknowledgePagePolicy)
    .header('referrer-policy', 'no-referrer')
    .header('x-robots-tag', 'noindex, nofollow')
    .header('cache-control', 'no-store')
    .type('text/html; charset=utf-8')
    .send(renderAcknowledgePage(seen, occasion));
}

function occasionOf(request: FastifyRequest, seen: SeenLink | null, { clock, site }: HttpParts): PageOccasion {
  const { zone, temperatureUnit } = site.current();
  const language = seen?.person?.language ?? languageOf(request);
  const saying = { words: wordsOf[language], temperatureUnit: seen?.person?.temperatureUnit ?? temperatureUnit };
  return { nowMs: clock.nowMs(), zone, language, saying };
}
