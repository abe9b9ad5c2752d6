// Rules of a chamber that are taken out of service, for maintenance, and returned.
import { z } from 'zod';
import { chamberRuleIds } from '../../../shared/alarms/alarm.ts';
import { chamberSchema, outOfServiceBodySchema } from '../../../shared/api/chambers.ts';
import { idSchema } from '../../../shared/api/common.ts';
import { Problem } from '../../../shared/problem.ts';
import { viewChamber } from '../../views/chamber-view.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

const params = z.object({ id: idSchema, rule: z.enum(chamberRuleIds) });
const manager = { config: { role: 'manager' as const } };
const answer = { params, response: { 200: chamberSchema } };

export function ruleRoutes(app: Routes, { watch, rounds, clock }: HttpParts): void {
  const find = (id: string) => {
    const chamber = watch.chamber(id);
    if (chamber === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchChamber);
    return chamber;
  };
  const view = (id: string) => viewChamber(find(id), watch, clock.nowMs());

  app.post(
    '/chambers/:id/rules/:rule/out-of-service',
    { ...manager, schema: { ...answer, body: outOfServiceBodySchema } },
    async (request) => {
      const { id, rule } = request.params;
      find(id);
      const act = { rule, person: actorOf(request).name, nowMs: clock.nowMs() };
      await rounds.act(id, { type: 'take-out-of-service', ...act, reason: request.body.reason });
      return view(id);
    },
  );
  app.post('/chambers/:id/rules/:rule/return-to-service', { ...manager, schema: answer }, async (request) => {
    const { id, rule } = request.params;
    find(id);
    const act = { rule, person: actorOf(request).name, nowMs: clock.nowMs() };
    await rounds.act(id, { type: 'return-to-service', ...act });
    return view(id);
  });
}
