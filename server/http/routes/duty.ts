// Who is on duty when, and whom an alarm asks next: everybody may look, the manager writes.
import { type Duty, dutySchema, dutyViewSchema } from '../../../shared/api/duty.ts';
import { Problem } from '../../../shared/problem.ts';
import { viewDuty } from '../../views/duty-view.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

export function dutyRoutes(app: Routes, { store, duty, clock }: HttpParts): void {
  app.get('/duty', { config: { role: 'viewer' }, schema: { response: { 200: dutyViewSchema } } }, async () =>
    viewDuty(duty, clock.nowMs()),
  );
  app.put(
    '/duty',
    { config: { role: 'manager' }, schema: { body: dutySchema, response: { 200: dutyViewSchema } } },
    async ({ body }) => {
      const known = new Set((await store.people.list()).map(({ id }) => id));
      await duty.change(withKnownPeople(body, known));
      return viewDuty(duty, clock.nowMs());
    },
  );
}

/** Somebody removed while the rota was being edited leaves the order quietly; a time of duty without its person would be a gap nobody sees. */
function withKnownPeople(duty: Duty, known: ReadonlySet<string>): Duty {
  if (duty.spans.some(({ personId }) => !known.has(personId)))
    throw new Problem('conflict', ({ problems }) => problems.rotaPersonGone);
  return { ...duty, order: duty.order.filter((id) => known.has(id)) };
}
