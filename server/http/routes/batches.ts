// Batches: what people do to them, their checks.
import { z } from 'zod';
import {
  batchPatchSchema,
  batchSchema,
  checkAnswerSchema,
  checkSchema,
  closeChamberBodySchema,
  finishBodySchema,
  holdBodySchema,
  logBodySchema,
  newBatchSchema,
} from '../../../shared/api/batches.ts';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import type { Batch } from '../../../shared/healing/batch.ts';
import { Problem } from '../../../shared/problem.ts';
import { viewBatch, viewChecks } from '../../views/batch-view.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { pageQuery } from '../page-query.ts';

const idParams = z.object({ id: idSchema });
const ms = (text: string | undefined) => (text === undefined ? undefined : Date.parse(text));

export function batchRoutes(app: Routes, parts: HttpParts): void {
  const { store, batchActs } = parts;
  const viewParts = () => ({ ...parts, zone: parts.site.current().zone, nowMs: parts.clock.nowMs() });
  const view = (batch: Batch) => viewBatch(batch, viewParts());
  const find = async (id: string) => {
    const batch = await store.batches.get(id);
    if (batch === null) throw new Problem('not-found', ({ problems }) => problems.noSuchBatch);
    return batch;
  };
  const read = { config: { role: 'viewer' as const } };
  const act = { config: { role: 'crew' as const } };
  const answer = { params: idParams, response: { 200: batchSchema } };

  app.get(
    '/batches',
    { ...read, schema: { querystring: pageQuery, response: { 200: listOf(batchSchema) } } },
    async ({ query }) => {
      const { items, nextCursor } = await store.batches.page(query);
      return { items: await Promise.all(items.map(view)), nextCursor };
    },
  );
  app.post(
    '/batches',
    { ...act, schema: { body: newBatchSchema, response: { 201: batchSchema } } },
    async (request, reply) => {
      const { openedAt, closedAt, ...rest } = request.body;
      const wanted = { ...rest, openedMs: ms(openedAt), closedMs: ms(closedAt) };
      const batch = await batchActs.open(wanted, actorOf(request).name);
      return reply.code(201).send(await view(batch));
    },
  );
  app.get('/batches/:id', { ...read, schema: answer }, async ({ params }) => view(await find(params.id)));
  app.patch('/batches/:id', { ...act, schema: { ...answer, body: batchPatchSchema } }, async (request) => {
    const { moveOnTo, closedAt, ...rest } = request.body;
    const fields = { ...rest, closedMs: ms(closedAt) };
    const { name } = actorOf(request);
    const { id } = request.params;
    const given = Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
    if (Object.keys(given).length > 0) await batchActs.correct(id, given, name);
    if (moveOnTo !== undefined) await batchActs.moveOn(id, moveOnTo, name);
    return view(await find(id));
  });
  app.post(
    '/batches/:id/close-chamber',
    { ...act, schema: { ...answer, body: closeChamberBodySchema.nullish() } },
    async (request) =>
      view(await batchActs.closeChamber(request.params.id, ms(request.body?.closedAt), actorOf(request).name)),
  );
  app.post('/batches/:id/hold', { ...act, schema: { ...answer, body: holdBodySchema.nullish() } }, async (request) =>
    view(await batchActs.hold(request.params.id, request.body?.reason ?? '', actorOf(request).name)),
  );
  app.post('/batches/:id/resume', { ...act, schema: answer }, async (request) =>
    view(await batchActs.resume(request.params.id, actorOf(request).name)),
  );
  app.post('/batches/:id/log', { ...act, schema: { ...answer, body: logBodySchema } }, async (request) => {
    const { kind, gapPercent, minutes, note, at } = request.body;
    const atMs = ms(at);
    const entry = {
      gapPercent: kind === 'gap' ? (gapPercent ?? null) : null,
      minutes: kind === 'working' ? (minutes ?? null) : null,
      note,
      ...(atMs !== undefined && { atMs }),
    };
    return view(await batchActs.log(request.params.id, kind, entry, actorOf(request).name));
  });
  app.post('/batches/:id/finish', { ...act, schema: { ...answer, body: finishBodySchema } }, async (request) =>
    view(await batchActs.finish(request.params.id, request.body.takenPlants, request.body.note, actorOf(request).name)),
  );
  app.get(
    '/batches/:id/checks',
    { ...read, schema: { params: idParams, response: { 200: listOf(checkSchema) } } },
    async ({ params }) => ({ items: await viewChecks(await find(params.id), viewParts()), nextCursor: null }),
  );
  app.post(
    '/batches/:id/checks/:checkId',
    {
      ...act,
      schema: {
        params: z.object({ id: idSchema, checkId: idSchema }),
        body: checkAnswerSchema,
        response: { 200: listOf(checkSchema) },
      },
    },
    async (request) => {
      const { id, checkId } = request.params;
      const batch = await batchActs.answer(id, checkId, request.body, actorOf(request).name);
      return { items: await viewChecks(batch, viewParts()), nextCursor: null };
    },
  );
}
