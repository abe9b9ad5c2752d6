// The calibration history of a probe.
import { z } from 'zod';
import { calibrationBodySchema, calibrationSchema, readCalibration } from '../../../shared/api/calibrations.ts';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import { viewCalibration } from '../../views/calibration-view.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const params = z.object({ id: idSchema });

export function calibrationRoutes(app: Routes, { calibrationActs, clock }: HttpParts): void {
  app.get(
    '/probes/:id/calibrations',
    { config: { role: 'viewer' }, schema: { params, response: { 200: listOf(calibrationSchema) } } },
    async ({ params: { id } }) => ({
      items: (await calibrationActs.history(id)).map(viewCalibration),
      nextCursor: null,
    }),
  );
  app.post(
    '/probes/:id/calibrations',
    {
      config: { role: 'manager' },
      schema: { params, body: calibrationBodySchema, response: { 201: calibrationSchema } },
    },
    async (request, reply) => {
      const { params: probe, body } = request;
      const correction = readCalibration(body, clock.nowMs());
      const entry = await calibrationActs.calibrate(probe.id, correction, body.note, actorOf(request).name);
      return reply.code(201).send(viewCalibration(entry));
    },
  );
}
