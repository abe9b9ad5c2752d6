// The record of a batch, streamed: its memory stays flat however long the batch was.
import { Readable } from 'node:stream';
import { z } from 'zod';
import { idSchema } from '../../../shared/api/common.ts';
import { Problem } from '../../../shared/problem.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const params = z.object({ id: idSchema });

/** Writes the record of a batch in a format; given by the wiring so that this adapter knows no other. */
export interface RecordWriters {
  json(batchId: string): AsyncIterable<string>;
  csv(batchId: string): AsyncIterable<string>;
}

const types = { json: 'application/json; charset=utf-8', csv: 'text/csv; charset=utf-8' } as const;

export function recordRoutes(app: Routes, { store }: HttpParts, writers: RecordWriters): void {
  for (const format of ['json', 'csv'] as const) {
    app.get(
      `/batches/:id/record.${format}`,
      { config: { role: 'viewer' }, schema: { params } },
      async (request, reply) => {
        const batch = await store.batches.get(request.params.id);
        if (batch === null) throw new Problem('not-found', ({ problems }) => problems.noSuchBatch);
        const name = `takewell-${batch.code.replace(/[^A-Za-z0-9._-]+/g, '-')}.${format}`;
        return reply
          .type(types[format])
          .header('content-disposition', `attachment; filename="${name}"`)
          .send(Readable.from(writers[format](batch.id)));
      },
    );
  }
}
