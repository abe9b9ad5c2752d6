// Problems → RFC 9457 answers. The only place that knows HTTP statuses of problems; anything else is logged whole and shown as "internal".
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import type { ProblemDetails } from '../../shared/api/common.ts';
import { type Fault, Problem, type ProblemCode, sayFaults } from '../../shared/problem.ts';
import { resolvePointer } from '../../shared/readings/json-pointer.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import { languageOf, wordsFor } from './language-of.ts';
import { type Found, sayFault } from './say-fault.ts';

const statuses: Record<ProblemCode, number> = {
  'bad-input': 400,
  'not-signed-in': 401,
  'not-allowed': 403,
  'not-found': 404,
  conflict: 409,
  'too-many': 429,
  'store-full': 507,
  'store-unavailable': 503,
  'store-too-new': 503,
  unavailable: 503,
  'bad-setting': 500,
  'port-in-use': 500,
};

/** Codes of errors that HTTP itself finds in a request; never those of the framework. */
const httpCodes: Record<number, string> = { 404: 'not-found', 413: 'too-large', 415: 'wrong-content', 429: 'too-many' };

/** Answers any error of a route, and a request that cannot be read at all; used as Fastify's error handlers. */
export function answerError(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const words = wordsFor(request);
  if (hasZodFastifySchemaValidationErrors(error)) return answerFaults(error, request, reply);
  if (error instanceof Problem) {
    const detail = error.sayIn(words);
    return answer(reply, words, { status: statuses[error.code], code: error.code, detail, faults: error.faults });
  }
  const status = error.statusCode ?? 500;
  if (status < 500) {
    const detail = sayHttpError(status, error, words);
    return answer(reply, words, { status, code: httpCodes[status] ?? 'bad-input', detail });
  }
  request.log.error({ err: error }, 'internal error');
  return answer(reply, words, { status: 500, code: 'internal', detail: words.problems.internal });
}

/** Answers a path that no route serves. */
export function answerNotFound(request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const words = wordsFor(request);
  return answer(reply, words, { status: 404, code: 'not-found', detail: words.problems.nothingHere });
}

type Invalid = FastifyError & { readonly validation: readonly (Found & { readonly instancePath: string })[] };

function answerFaults(error: Invalid, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const language = languageOf(request);
  const part = error.validationContext === 'querystring' ? request.query : request.body;
  const faults = error.validation.map((found) => {
    // The validator writes the body as a whole as `/`; the JSON Pointer of the whole is empty (RFC 6901 §5).
    const where = found.instancePath === '/' ? '' : found.instancePath;
    const reason = sayFault(found, resolvePointer(part, where), language);
    return {
      where,
      reason: () => reason,
      said: `${where.replace(/^\//, '').replaceAll('/', '.') || 'body'}: ${reason}`,
    };
  });
  const detail = faults.map(({ said }) => said).join('; ');
  return answer(reply, wordsFor(request), { status: 400, code: 'bad-input', detail, faults });
}

function sayHttpError(status: number, error: FastifyError, { problems }: SharedWords): string {
  if (error.code === 'FST_ERR_CTP_INVALID_JSON_BODY') return problems.notJson;
  if (status === 413) return problems.tooLarge;
  if (status === 415) return problems.sendJson;
  if (status === 429) return problems.tooManyTries;
  return error.message;
}

interface Answer {
  readonly status: number;
  readonly code: string;
  readonly detail: string;
  readonly faults?: readonly Fault[];
}

function answer(reply: FastifyReply, words: SharedWords, { status, code, detail, faults = [] }: Answer): FastifyReply {
  const { titles } = words.problems;
  const title = titles[status] ?? titles[500] ?? '';
  const body: ProblemDetails = { type: `urn:takewell:problem:${code}`, title, status, detail };
  if (faults.length > 0) body.faults = sayFaults(faults, words);
  // Serialised here: the response schema of the route describes its success only.
  return reply.code(status).type('application/problem+json').serializer(JSON.stringify).send(body);
}
