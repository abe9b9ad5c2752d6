// What is worked out about a batch: the next step of the opening, what its plants were exposed to, and what batches teach.
import { z } from 'zod';
import { idSchema } from '../../../shared/api/common.ts';
import { exposureSchema } from '../../../shared/api/exposure.ts';
import { learningSchema, overlayQuerySchema, overlaySchema } from '../../../shared/api/learning.ts';
import { ventingSchema } from '../../../shared/api/venting.ts';
import { Problem } from '../../../shared/problem.ts';
import { createExposureBook } from '../../exposure/exposure-book.ts';
import { viewExposure } from '../../views/exposure-view.ts';
import { viewLearning } from '../../views/learning-view.ts';
import { viewOverlay } from '../../views/overlay-view.ts';
import { createVentingView } from '../../views/venting-view.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';

const params = z.object({ id: idSchema });

export function healingRoutes(app: Routes, parts: HttpParts): void {
  const find = async (id: string) => {
    const batch = await parts.store.batches.get(id);
    if (batch === null) throw new Problem('not-found', ({ problems }) => problems.noSuchBatch);
    return batch;
  };
  const viewVenting = createVentingView(parts);
  const exposures = createExposureBook(parts);
  const read = { config: { role: 'viewer' as const } };

  app.get('/batches/:id/venting', { ...read, schema: { params, response: { 200: ventingSchema } } }, async (request) =>
    viewVenting(await find(request.params.id), wordsFor(request)),
  );
  app.get(
    '/batches/:id/exposure',
    { ...read, schema: { params, response: { 200: exposureSchema } } },
    async (request) => {
      const batch = await find(request.params.id);
      return viewExposure(batch.id, await exposures.figuresOf(batch));
    },
  );
  // A fixed address goes before `/batches/:id` whatever the order of routes, and no id of a batch is as short as these.
  app.get('/batches/learning', { ...read, schema: { response: { 200: learningSchema } } }, async () =>
    viewLearning({ store: parts.store, exposures }),
  );
  app.get(
    '/batches/overlay',
    { ...read, schema: { querystring: overlayQuerySchema, response: { 200: overlaySchema } } },
    async ({ query }) => viewOverlay(query.ids, query.points, parts),
  );
}
