// Chambers and the series behind their charts.
import { z } from 'zod';
import {
  chamberPatchSchema,
  chamberSchema,
  climateQuerySchema,
  climateSeriesSchema,
  newChamberSchema,
  retiredChamberSchema,
} from '../../../shared/api/chambers.ts';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import { Problem } from '../../../shared/problem.ts';
import { utcText } from '../../../shared/units.ts';
import { createChamberTexts } from '../../views/chamber-texts.ts';
import { viewChamber } from '../../views/chamber-view.ts';
import { chartClimate } from '../../views/chart-climate.ts';
import type { WatchedChamber } from '../../watch/watched-chamber.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const idParams = z.object({ id: idSchema });
const chamberListSchema = listOf(chamberSchema);
type ChamberList = z.infer<typeof chamberListSchema>;

export function chamberRoutes(app: Routes, parts: HttpParts): void {
  const { watch, chamberActs, clock, store } = parts;
  const find = (id: string) => {
    const chamber = watch.chamber(id);
    if (chamber === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchChamber);
    return chamber;
  };
  const view = (id: string) => viewChamber(find(id), watch, clock.nowMs());
  const viewNow = (chamber: WatchedChamber, nowMs: number) => viewChamber(chamber, watch, nowMs);
  const textOfAll = createChamberTexts({ watch, site: parts.site, view: viewNow });

  app.get(
    '/chambers',
    { config: { role: 'viewer' }, schema: { response: { 200: chamberListSchema } } },
    // A text goes out as it is; it was made by the schema that is declared here.
    async (_request, reply) =>
      reply.type('application/json; charset=utf-8').send(textOfAll(clock.nowMs()) as unknown as ChamberList),
  );
  app.post(
    '/chambers',
    { config: { role: 'manager' }, schema: { body: newChamberSchema, response: { 201: chamberSchema } } },
    async ({ body }, reply) => {
      const { id } = await chamberActs.addChamber(body.name);
      return reply.code(201).send(view(id));
    },
  );
  app.get(
    '/chambers/:id',
    { config: { role: 'viewer' }, schema: { params: idParams, response: { 200: chamberSchema } } },
    async ({ params }) => view(params.id),
  );
  app.patch(
    '/chambers/:id',
    {
      config: { role: 'manager' },
      schema: { params: idParams, body: chamberPatchSchema, response: { 200: chamberSchema } },
    },
    async ({ params, body }) => {
      if (body.name !== undefined) await chamberActs.renameChamber(params.id, body.name);
      return view(params.id);
    },
  );
  app.delete(
    '/chambers/:id',
    { config: { role: 'manager' }, schema: { params: idParams, response: { 204: z.null() } } },
    async ({ params }, reply) => {
      await chamberActs.removeChamber(params.id);
      return reply.code(204).send(null);
    },
  );
  app.get(
    '/retired-chambers',
    { config: { role: 'manager' }, schema: { response: { 200: listOf(retiredChamberSchema) } } },
    async () => ({
      items: (await store.chambers.retired()).map(({ id, name, retiredMs }) => ({
        ...{ id, name },
        retiredAt: utcText(retiredMs),
      })),
      nextCursor: null,
    }),
  );
  app.post(
    '/retired-chambers/:id/bring-back',
    {
      config: { role: 'manager' },
      schema: { params: idParams, body: newChamberSchema, response: { 200: chamberSchema } },
    },
    async ({ params, body }) => {
      await chamberActs.bringBackChamber(params.id, body.name);
      return view(params.id);
    },
  );
  app.get(
    '/chambers/:id/climate',
    {
      config: { role: 'viewer' },
      schema: { params: idParams, querystring: climateQuerySchema, response: { 200: climateSeriesSchema } },
    },
    async ({ params, query }) => chartClimate(find(params.id), query, parts),
  );
}
