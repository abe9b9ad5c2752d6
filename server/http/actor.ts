// Who a request comes from and what it may do. Every route declares its role; one that does not stops the start.
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { type Role, roles } from '../../shared/api/session.ts';
import type { Language } from '../../shared/languages.ts';
import { Problem } from '../../shared/problem.ts';
import type { SignIn } from '../people/sign-in.ts';

export const SESSION_COOKIE = 'takewell_session';
/** Holds the read-only token of a wall screen. */
export const WALL_COOKIE = 'takewell_wall';

export interface Actor {
  /** Of the person or of the token. */
  readonly id: string;
  /** For the log and for "who has it". */
  readonly name: string;
  readonly role: Role;
  readonly personId: string | null;
  /** The person's own; null = none is known. */
  readonly language: Language | null;
  readonly session: string | null;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Least role that may call the route; `public` = anybody. */
    role?: Role | 'public';
    /** A token of a machine may not call it, whatever its scope. */
    peopleOnly?: boolean;
    /** A page of another origin may post to it: what it needs to know is in its address, and no cookie counts. */
    fromAnywhere?: boolean;
  }
  interface FastifyRequest {
    actor: Actor | null;
  }
}

/** Adds the checks to an instance. `ownOrigins`: origins from which a browser may write, besides the host asked for. */
export function guardRoutes(app: FastifyInstance, signIn: SignIn, ownOrigins: readonly string[]): void {
  app.decorateRequest('actor', null);
  app.addHook('onRoute', (route) => {
    // Files of the dashboard carry no data: they are for anybody, or nobody could sign in.
    if (!route.url.startsWith('/api/')) route.config = { ...route.config, role: 'public' };
    if (route.config?.role === undefined) throw new Error(`route ${route.method} ${route.url} declares no role`);
  });
  app.addHook('onRequest', async (request) => {
    if (request.routeOptions.config.fromAnywhere !== true) refuseForeignWrites(request, ownOrigins);
    // What serves no route answers "not found" to everybody: the dashboard's own addresses are among them.
    if (request.is404) return;
    request.actor = await findActor(request, signIn);
    const needed = request.routeOptions.config.role ?? 'manager';
    if (needed === 'public') return;
    if (request.actor === null) throw new Problem('not-signed-in', ({ problems }) => problems.signInToSee);
    const own = request.actor.role;
    if (roles.indexOf(own) < roles.indexOf(needed)) {
      throw new Problem('not-allowed', ({ names, problems }) =>
        problems.roleTooLow(names.roles[needed], names.roles[own]),
      );
    }
    if (request.routeOptions.config.peopleOnly) personIdOf(request);
  });
}

/** The actor of a route that is not public. */
export function actorOf(request: FastifyRequest): Actor {
  if (request.actor === null) throw new Problem('not-signed-in', ({ problems }) => problems.signInToDo);
  return request.actor;
}

/** The person of a route that only people may call. */
export function personIdOf(request: FastifyRequest): string {
  const { personId } = actorOf(request);
  if (personId === null) throw new Problem('not-allowed', ({ problems }) => problems.tokenIsNoPerson);
  return personId;
}

/** The token a machine brings with its request. */
export function bearerOf(request: FastifyRequest): string | undefined {
  return /^Bearer (.+)$/.exec(request.headers.authorization ?? '')?.[1];
}

async function findActor(request: FastifyRequest, signIn: SignIn): Promise<Actor | null> {
  const bearer = bearerOf(request);
  if (bearer !== undefined) {
    const token = await signIn.byToken(bearer);
    if (token === null) throw new Problem('not-signed-in', ({ problems }) => problems.unknownToken);
    const role = token.scope === 'full' ? 'manager' : 'viewer';
    return { id: token.id, name: token.name, role, personId: null, language: null, session: null };
  }
  const session = request.cookies[SESSION_COOKIE];
  const person = session === undefined ? null : await signIn.bySession(session);
  if (session === undefined || person === null) return findWall(request, signIn);
  const { id, name, role, language } = person;
  return { id, name, role, personId: id, language, session };
}

/** A wall screen sees and never changes anything, whatever the token in its cookie may do elsewhere. */
async function findWall(request: FastifyRequest, signIn: SignIn): Promise<Actor | null> {
  const cookie = request.cookies[WALL_COOKIE];
  const token = cookie === undefined ? null : await signIn.byToken(cookie);
  if (token === null) return null;
  return { id: token.id, name: token.name, role: 'viewer', personId: null, language: null, session: null };
}

// SameSite=Lax keeps the cookie out of foreign posts; this also covers a neighbour on the same site.
function refuseForeignWrites(request: FastifyRequest, ownOrigins: readonly string[]): void {
  if (request.method === 'GET' || request.method === 'HEAD') return;
  const site = request.headers['sec-fetch-site'];
  const { origin, host } = request.headers;
  const isForeignSite = site !== undefined && site !== 'same-origin' && site !== 'none';
  const isForeignOrigin =
    origin !== undefined && !ownOrigins.includes(origin) && origin !== `http://${host}` && origin !== `https://${host}`;
  if (isForeignSite || isForeignOrigin) throw new Problem('not-allowed', ({ problems }) => problems.foreignSite);
}
