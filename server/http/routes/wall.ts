// The wall screen: a read-only token, brought once behind the # of a link, becomes a cookie that a stream can be read with.
import { z } from 'zod';
import { Problem } from '../../../shared/problem.ts';
import { DAY_MS } from '../../../shared/units.ts';
import { actorOf, bearerOf, WALL_COOKIE } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

/** As long as browsers keep any cookie; the page renews it every day. */
const WALL_MS = 400 * DAY_MS;

export function wallRoutes(app: Routes, { isSecure }: HttpParts): void {
  const cookie = {
    httpOnly: true,
    sameSite: 'strict',
    secure: isSecure,
    path: '/api/v1',
    maxAge: WALL_MS / 1000,
  } as const;
  app.post(
    '/wall',
    {
      config: { role: 'viewer' },
      schema: {
        description:
          'With a read-only token: keeps it as a cookie, so that this browser may see everything and change nothing.',
        response: { 200: z.object({ name: z.string() }) },
      },
    },
    async (request, reply) => {
      const { name, role } = actorOf(request);
      const bearer = bearerOf(request);
      const token = bearer ?? request.cookies[WALL_COOKIE];
      // Somebody who has signed in needs no cookie more.
      if (token === undefined) return { name };
      if (bearer !== undefined && role !== 'viewer')
        throw new Problem('bad-input', ({ problems }) => problems.wallNeedsReadOnly);
      return reply.setCookie(WALL_COOKIE, token, cookie).send({ name });
    },
  );
}
