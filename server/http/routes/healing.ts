// What is worked out about a batch: the next step of the opening, what its plants were exposed to, and what batches teach.
import { z } from 'zod';
import { idSchema } from '../../../shared/api/common.ts';
import { ventingSchema } from '../../../shared/api/venting.ts';
import { Problem } from '../../../shared/problem.ts';
import { createVentingView } from '../../views/venting-view.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const params = z.object({ id: idSchema });

export function healingRoutes(app: Routes, parts: HttpParts): void {
  const find = async (id: string) => {
    const batch = await parts.store.batches.get(id);
    if (batch === null) throw new Problem('not-found', 'There is no such batch.');
    return batch;
  };
  const viewVenting = createVentingView(parts);
  const read = { config: { role: 'viewer' as const } };

  app.get('/batches/:id/venting', { ...read, schema: { params, response: { 200: ventingSchema } } }, async (request) =>
    viewVenting(await find(request.params.id)),
  );
}
