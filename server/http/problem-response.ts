// Problems → RFC 9457 answers. The only place that knows HTTP statuses of problems; anything else is logged whole and shown as "internal".
import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import type { ProblemDetails } from '../../shared/api/common.ts';
import { type Fault, Problem, type ProblemCode } from '../../shared/problem.ts';

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

const titles: Record<number, string> = {
  400: 'The request is not right',
  401: 'Sign in first',
  403: 'Not allowed',
  404: 'Not found',
  409: 'It does not fit',
  413: 'Too large',
  415: 'Wrong kind of content',
  429: 'Too many tries',
  503: 'Not available now',
  507: 'No room left',
};

/** Codes of errors that HTTP itself finds in a request; never those of the framework. */
const httpCodes: Record<number, string> = { 404: 'not-found', 413: 'too-large', 415: 'wrong-content', 429: 'too-many' };

/** Answers any error of a route, and a request that cannot be read at all; used as Fastify's error handlers. */
export function answerError(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  if (hasZodFastifySchemaValidationErrors(error)) return answerFaults(error.validation, reply);
  if (error instanceof Problem) return answer(reply, statuses[error.code], error.code, error.message, error.faults);
  const status = error.statusCode ?? 500;
  if (status < 500) return answer(reply, status, httpCodes[status] ?? 'bad-input', sayHttpError(status, error));
  request.log.error({ err: error }, 'internal error');
  return answer(reply, 500, 'internal', 'Something went wrong inside Takewell; the log of the service says what.');
}

/** Answers a path that no route serves. */
export function answerNotFound(_request: FastifyRequest, reply: FastifyReply): FastifyReply {
  return answer(reply, 404, 'not-found', 'There is nothing at this address.');
}

function answerFaults(
  validation: readonly { instancePath: string; message?: string | undefined }[],
  reply: FastifyReply,
): FastifyReply {
  // The validator writes the body as a whole as `/`; the JSON Pointer of the whole is empty (RFC 6901 §5).
  const faults = validation.map(({ instancePath, message }) => ({
    where: instancePath === '/' ? '' : instancePath,
    reason: message ?? 'is not right',
  }));
  const detail = faults.map(
    ({ where, reason }) => `${where.replace(/^\//, '').replaceAll('/', '.') || 'body'}: ${reason}`,
  );
  return answer(reply, 400, 'bad-input', detail.join('; '), faults);
}

function sayHttpError(status: number, error: FastifyError): string {
  if (error.code === 'FST_ERR_CTP_INVALID_JSON_BODY') return 'The body is not JSON that can be read.';
  if (status === 413) return 'That is too large to take in.';
  if (status === 415) return 'Send JSON with the header content-type: application/json.';
  if (status === 429) return 'Too many tries: wait a minute.';
  return error.message;
}

function answer(
  reply: FastifyReply,
  status: number,
  code: string,
  detail: string,
  faults: readonly Fault[] = [],
): FastifyReply {
  const title = titles[status] ?? 'Internal error';
  const body: ProblemDetails = { type: `urn:takewell:problem:${code}`, title, status, detail };
  if (faults.length > 0) body.faults = faults.map((one) => ({ ...one }));
  // Serialised here: the response schema of the route describes its success only.
  return reply.code(status).type('application/problem+json').serializer(JSON.stringify).send(body);
}
