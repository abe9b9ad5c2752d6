// The HTTP side put together: plugins, checks, routes, the built dashboard. Statuses and bodies of errors are problem-response.ts's alone.
import { existsSync, readFileSync } from 'node:fs';
import { createSecureContext } from 'node:tls';
import { fileURLToPath } from 'node:url';
import fastifyCookie from '@fastify/cookie';
import fastifyHelmet from '@fastify/helmet';
import fastifyRateLimit from '@fastify/rate-limit';
import fastifyStatic from '@fastify/static';
import fastifySwagger from '@fastify/swagger';
import fastify, {
  type FastifyBaseLogger,
  type FastifyInstance,
  type FastifyPluginCallback,
  type FastifyReply,
  LogController,
} from 'fastify';
import {
  jsonSchemaTransform,
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod';
import { Problem } from '../../shared/problem.ts';
import type { Settings } from '../settings.ts';
import { guardRoutes } from './actor.ts';
import { compressAnswers } from './compress-answers.ts';
import type { HttpParts, Routes } from './http-parts.ts';
import { answerError, answerNotFound } from './problem-response.ts';
import { acknowledgePages, acknowledgeRoutes } from './routes/acknowledge.ts';
import { alarmRoutes } from './routes/alarms.ts';
import { batchRoutes } from './routes/batches.ts';
import { calibrationRoutes } from './routes/calibrations.ts';
import { chamberRoutes } from './routes/chambers.ts';
import { channelRoutes } from './routes/channels.ts';
import { dutyRoutes } from './routes/duty.ts';
import { healingRoutes } from './routes/healing.ts';
import { invitationRoutes } from './routes/invitations.ts';
import { peopleRoutes } from './routes/people.ts';
import { phoneRoutes } from './routes/phones.ts';
import { probeRoutes } from './routes/probes.ts';
import { profileRoutes } from './routes/profiles.ts';
import { type RecordWriters, recordRoutes } from './routes/records.ts';
import { ruleRoutes } from './routes/rules.ts';
import { serviceRoutes } from './routes/service.ts';
import { sessionRoutes } from './routes/session.ts';
import { settingRoutes } from './routes/settings.ts';
import { wallRoutes } from './routes/wall.ts';

export interface HttpServer {
  /** Starts listening; the address it can be reached at. Throws a Problem `port-in-use` or `bad-setting`. */
  listen(): Promise<string>;
  close(): Promise<void>;
}

const webFolder = fileURLToPath(new URL('../../web/dist/', import.meta.url));

export async function openHttpServer(
  settings: Settings,
  parts: HttpParts,
  writers: RecordWriters,
  log: FastifyBaseLogger,
): Promise<HttpServer> {
  const { tls, trustProxy, host, port } = settings.http;
  const options = {
    loggerInstance: log,
    logController: new LogController({ disableRequestLogging: true }),
    bodyLimit: 1024 * 1024,
    routerOptions: { maxParamLength: 300 },
    trustProxy: trustProxy === null ? false : [...trustProxy],
    forceCloseConnections: true,
    frameworkErrors: answerError,
  };
  const app: FastifyInstance =
    tls === null ? fastify(options) : (fastify({ ...options, https: readTls(tls) }) as unknown as FastifyInstance);
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  app.setErrorHandler(answerError);
  await addPlugins(app, settings, parts);
  guardRoutes(app, parts.signIn, settings.publicUrl === null ? [] : [new URL(settings.publicUrl).origin]);
  const routes: FastifyPluginCallback = (api, _options, done) => {
    compressAnswers(api);
    addRoutes(api.withTypeProvider<ZodTypeProvider>(), parts, writers);
    done();
  };
  await app.register(routes, { prefix: '/api/v1' });
  const pages: FastifyPluginCallback = (inner, _options, done) => {
    acknowledgePages(inner, parts);
    done();
  };
  await app.register(pages);
  await addDashboard(app);
  return {
    async listen() {
      await app.listen({ host, port }).catch((error: NodeJS.ErrnoException) => {
        throw listenProblem(error, settings);
      });
      const address = app.server.address();
      const shownPort = typeof address === 'object' && address !== null ? address.port : port;
      const name = host === '0.0.0.0' || host === '::' ? 'localhost' : host;
      return `${tls === null ? 'http' : 'https'}://${name.includes(':') ? `[${name}]` : name}:${shownPort}`;
    },
    async close() {
      parts.hub.close();
      await app.close();
    },
  };
}

async function addPlugins(app: FastifyInstance, settings: Settings, { version, isSecure }: HttpParts): Promise<void> {
  await app.register(fastifyCookie);
  await app.register(fastifyRateLimit, { global: false });
  await app.register(fastifyHelmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        frameAncestors: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        objectSrc: ["'none'"],
      },
    },
    xFrameOptions: { action: 'deny' },
    hsts: isSecure ? { maxAge: 180 * 24 * 3600, includeSubDomains: false } : false,
  });
  await app.register(fastifySwagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Takewell',
        version,
        description: 'Climate, alarms, venting and record of healing grafted seedlings.',
      },
      servers: [{ url: settings.publicUrl ?? '/' }],
    },
    transform: jsonSchemaTransform,
  });
}

function addRoutes(api: Routes, parts: HttpParts, writers: RecordWriters): void {
  sessionRoutes(api, parts);
  peopleRoutes(api, parts);
  invitationRoutes(api, parts);
  wallRoutes(api, parts);
  chamberRoutes(api, parts);
  probeRoutes(api, parts);
  calibrationRoutes(api, parts);
  profileRoutes(api, parts);
  batchRoutes(api, parts);
  healingRoutes(api, parts);
  alarmRoutes(api, parts);
  ruleRoutes(api, parts);
  settingRoutes(api, parts);
  phoneRoutes(api, parts);
  channelRoutes(api, parts);
  dutyRoutes(api, parts);
  acknowledgeRoutes(api, parts);
  recordRoutes(api, parts, writers);
  serviceRoutes(api, parts);
  api.get('/openapi.json', { config: { role: 'public' }, schema: { hide: true } }, async () => api.swagger());
}

/** The built dashboard. Its addresses are its own business: any path that is no file and no API answers with its page. */
async function addDashboard(app: FastifyInstance): Promise<void> {
  const isBuilt = existsSync(`${webFolder}index.html`);
  if (isBuilt) {
    await app.register(fastifyStatic, {
      root: webFolder,
      wildcard: false,
      setHeaders: cacheByName,
      cacheControl: false,
      preCompressed: true,
    });
  }
  app.setNotFoundHandler({ preHandler: [] }, (request, reply) => {
    const isPage =
      request.method === 'GET' &&
      !request.url.startsWith('/api/') &&
      !/\.[a-z0-9]+$/i.test(request.url.split('?')[0] ?? '');
    if (isPage && isBuilt) return reply.header('cache-control', 'no-cache').sendFile('index.html');
    return answerNotFound(request, reply);
  });
}

// Hashed names never change; the page, the worker and the manifest are asked for anew.
function cacheByName(reply: FastifyReply, path: string): void {
  const isHashed = path.includes('/assets/');
  reply.header('cache-control', isHashed ? 'public, max-age=31536000, immutable' : 'no-cache');
}

function readTls({ cert, key }: { cert: string; key: string }): { cert: Buffer; key: Buffer } {
  const files = { cert: readPem('TAKEWELL_TLS_CERT', cert), key: readPem('TAKEWELL_TLS_KEY', key) };
  try {
    createSecureContext(files);
  } catch (cause) {
    const text = 'The settings TAKEWELL_TLS_CERT and TAKEWELL_TLS_KEY must name a PEM certificate and its own PEM key.';
    throw Problem.forOperator('bad-setting', text, { cause });
  }
  return files;
}

function readPem(setting: string, file: string): Buffer {
  try {
    return readFileSync(file);
  } catch (cause) {
    throw Problem.forOperator('bad-setting', `The setting ${setting} names a file that cannot be read: ${file}.`, {
      cause,
    });
  }
}

function listenProblem(error: NodeJS.ErrnoException, { http }: Settings): unknown {
  if (error.code === 'EADDRINUSE') {
    return Problem.forOperator(
      'port-in-use',
      `Port ${http.port} is in use: stop the other program, or set TAKEWELL_HTTP_PORT.`,
      { cause: error },
    );
  }
  if (
    error.code === 'EADDRNOTAVAIL' ||
    error.code === 'ENOTFOUND' ||
    error.code === 'EAI_AGAIN' ||
    error.code === 'EACCES'
  ) {
    return Problem.forOperator(
      'bad-setting',
      `The setting TAKEWELL_HTTP_HOST ${http.host} with port ${http.port} cannot be listened on (${error.code}).`,
      {
        cause: error,
      },
    );
  }
  return error;
}
