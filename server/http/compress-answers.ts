// Answers of the API, packed for a phone in a greenhouse: sixty chambers are a tenth of their size. Files of the dashboard are packed when it is built.
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { FastifyInstance } from 'fastify';

const pack = promisify(gzip);

/** Less fits into one packet anyway. */
const LEAST_BYTES = 1_400;
/** Half of the work of the usual level for nearly the size. */
const LEVEL = 3;

/**
 * Packs JSON that is read. What is answered to a change is left alone: it may hold a secret beside what the sender chose, which packing would let
 * an eavesdropper guess by its length. Streams are left alone too.
 */
export function compressAnswers(app: FastifyInstance): void {
  app.addHook('onSend', async (request, reply, payload) => {
    if (request.method !== 'GET' || typeof payload !== 'string' || payload.length < LEAST_BYTES) return payload;
    if (reply.hasHeader('content-encoding')) return payload;
    reply.header('vary', 'accept-encoding');
    if (!acceptsGzip(request.headers['accept-encoding'])) return payload;
    const packed = await pack(payload, { level: LEVEL });
    reply.header('content-encoding', 'gzip');
    reply.header('content-length', packed.length);
    return packed;
  });
}

/** RFC 9110 §12.5.3: named, and not refused by a weight of nothing. */
export function acceptsGzip(header: string | readonly string[] | undefined): boolean {
  const codings = String(header ?? '').split(',');
  return codings.some((one) => /^\s*gzip\s*(;\s*q=(?!0(\.0*)?\s*$)[\d.]+\s*)?$/i.test(one));
}
