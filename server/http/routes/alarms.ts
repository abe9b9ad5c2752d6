// Alarms: the list, and what people do to them.
import { z } from 'zod';
import type { Alarm } from '../../../shared/alarms/alarm.ts';
import { watchedPart } from '../../../shared/alarms/alarm-statistics.ts';
import { alarmStatisticsSchema, statisticsQuerySchema } from '../../../shared/api/alarm-statistics.ts';
import { alarmIdSchema, alarmQuerySchema, alarmSchema, shelveBodySchema } from '../../../shared/api/alarms.ts';
import { listOf } from '../../../shared/api/common.ts';
import { Problem } from '../../../shared/problem.ts';
import { DAY_MS, MINUTE_MS } from '../../../shared/units.ts';
import { viewAlarm } from '../../views/alarm-view.ts';
import { viewStatistics } from '../../views/statistics-view.ts';
import { actorOf } from '../actor.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { pageQuery } from '../page-query.ts';

const LONGEST_MS = 400 * DAY_MS;
const idParams = z.object({ id: alarmIdSchema });

export function alarmRoutes(app: Routes, { store, watch, rounds, site, clock }: HttpParts): void {
  const find = async (id: string): Promise<Alarm> => {
    const alarm = await store.alarms.get(id);
    if (alarm === null) throw new Problem('not-found', ({ problems }) => problems.noSuchAlarm);
    return alarm;
  };
  const view = async (alarm: Alarm) => {
    const batch = alarm.batchId === null ? null : await store.batches.get(alarm.batchId);
    return viewAlarm(alarm, watch, clock.nowMs(), batch?.code ?? null);
  };
  const answer = { params: idParams, response: { 200: alarmSchema } };

  app.get(
    '/alarms',
    {
      config: { role: 'viewer' },
      schema: { querystring: pageQuery.extend(alarmQuerySchema.shape), response: { 200: listOf(alarmSchema) } },
    },
    async ({ query }) => {
      const { items, nextCursor } = await store.alarms.page(query);
      return { items: await Promise.all(items.map(view)), nextCursor };
    },
  );
  app.get(
    '/alarms/statistics',
    {
      config: { role: 'viewer' },
      schema: { querystring: statisticsQuerySchema, response: { 200: alarmStatisticsSchema } },
    },
    async ({ query }) => {
      const toMs = query.to === undefined ? clock.nowMs() : Date.parse(query.to);
      const fromMs = query.from === undefined ? toMs - 30 * DAY_MS : Date.parse(query.from);
      if (fromMs >= toMs) throw new Problem('bad-input', ({ problems }) => problems.endBeforeStart);
      if (toMs - fromMs > LONGEST_MS) throw new Problem('bad-input', ({ problems }) => problems.askFewerDays);
      const sinceMs = Math.min(toMs, ...(await store.chambers.listWithRetired()).map(({ createdMs }) => createdMs));
      const stretch = watchedPart({ fromMs, toMs, zone: site.current().zone }, sinceMs);
      return viewStatistics(await store.alarms.steps(stretch.fromMs, toMs), stretch);
    },
  );
  app.post('/alarms/:id/acknowledge', { config: { role: 'crew' }, schema: answer }, async (request) => {
    const alarm = await find(request.params.id);
    const person = actorOf(request).name;
    await rounds.act(alarm.chamberId, { type: 'acknowledge', alarmId: alarm.id, person, nowMs: clock.nowMs() });
    return view(await find(alarm.id));
  });
  app.post(
    '/alarms/:id/shelve',
    { config: { role: 'crew' }, schema: { ...answer, body: shelveBodySchema } },
    async (request) => {
      const alarm = await find(request.params.id);
      const { minutes, reason } = request.body;
      const nowMs = clock.nowMs();
      const person = actorOf(request).name;
      const untilMs = nowMs + minutes * MINUTE_MS;
      await rounds.act(alarm.chamberId, { type: 'shelve', alarmId: alarm.id, person, nowMs, untilMs, reason });
      return view(await find(alarm.id));
    },
  );
  app.post('/alarms/:id/unshelve', { config: { role: 'crew' }, schema: answer }, async (request) => {
    const alarm = await find(request.params.id);
    const person = actorOf(request).name;
    await rounds.act(alarm.chamberId, { type: 'unshelve', alarmId: alarm.id, person, nowMs: clock.nowMs() });
    return view(await find(alarm.id));
  });
}
