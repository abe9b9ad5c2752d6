// Nodes, probes, and the messages that were refused.
import { z } from 'zod';
import { idSchema, listOf } from '../../../shared/api/common.ts';
import {
  brokerAddressSchema,
  newNodeSchema,
  newProbeSchema,
  nodeCredentialsSchema,
  nodeSchema,
  probePatchSchema,
  probeSchema,
  refusedSchema,
} from '../../../shared/api/probes.ts';
import { Problem } from '../../../shared/problem.ts';
import { hashSecret, makeSecret } from '../../people/secrets.ts';
import { viewBattery, viewNode, viewProbe, viewRefused } from '../../views/probe-view.ts';
import { createWetAirBook } from '../../views/wet-air-book.ts';
import type { ProbeState } from '../../watch/probe-book.ts';
import type { HttpParts, Routes } from '../http-parts.ts';
import { wordsFor } from '../language-of.ts';

const idParams = z.object({ id: idSchema });

export function probeRoutes(app: Routes, { store, watch, chamberActs, clock, broker }: HttpParts): void {
  const wetAir = createWetAirBook({ store, clock });
  const viewAll = async (states: readonly ProbeState[]) => {
    await wetAir.countDue(states);
    const batteries = new Map((await store.probes.nodes()).map((node) => [node.id, viewBattery(node)]));
    return states.map((state) =>
      viewProbe(state, {
        battery: batteries.get(state.probe.nodeId) ?? null,
        hoursAbove90Rh: wetAir.hoursOf(state),
      }),
    );
  };
  const view = async (id: string) => {
    const state = watch.probes.byId(id);
    const [shown] = state === undefined ? [] : await viewAll([state]);
    if (shown === undefined) throw new Problem('not-found', ({ problems }) => problems.noSuchProbe);
    return shown;
  };
  app.get('/probes', { config: { role: 'viewer' }, schema: { response: { 200: listOf(probeSchema) } } }, async () => ({
    items: await viewAll([...watch.probes.all()]),
    nextCursor: null,
  }));
  app.post(
    '/probes',
    { config: { role: 'manager' }, schema: { body: newProbeSchema, response: { 201: probeSchema } } },
    async ({ body }, reply) => {
      const { id } = await chamberActs.addProbe(body);
      return reply.code(201).send(await view(id));
    },
  );
  app.patch(
    '/probes/:id',
    {
      config: { role: 'manager' },
      schema: { params: idParams, body: probePatchSchema, response: { 200: probeSchema } },
    },
    async ({ params, body }) => {
      await chamberActs.changeProbe(params.id, body);
      return view(params.id);
    },
  );
  app.get('/nodes', { config: { role: 'manager' }, schema: { response: { 200: listOf(nodeSchema) } } }, async () => ({
    items: (await store.probes.nodes()).map(viewNode),
    nextCursor: null,
  }));
  app.post(
    '/nodes',
    { config: { role: 'manager' }, schema: { body: newNodeSchema, response: { 201: nodeSchema } } },
    async ({ body }, reply) => {
      const node = {
        id: body.id,
        status: 'unknown',
        statusMs: null,
        passwordHash: null,
        discoveredMs: clock.nowMs(),
      } as const;
      await store.probes.addNode(node);
      return reply.code(201).send(viewNode(node));
    },
  );
  app.post(
    '/nodes/:id/credentials',
    { config: { role: 'manager' }, schema: { params: idParams, response: { 201: nodeCredentialsSchema } } },
    async ({ params }, reply) => {
      const password = makeSecret();
      if (!(await store.probes.setNodePassword(params.id, hashSecret(password)))) {
        throw new Problem('not-found', ({ problems }) => problems.noSuchNode);
      }
      return reply.code(201).send({ name: params.id, password });
    },
  );
  app.get(
    '/broker',
    { config: { role: 'manager' }, schema: { response: { 200: brokerAddressSchema } } },
    async () => broker,
  );
  app.get(
    '/refused',
    { config: { role: 'viewer' }, schema: { response: { 200: listOf(refusedSchema) } } },
    async (request) => {
      const words = wordsFor(request);
      return { items: (await store.probes.refused()).map((one) => viewRefused(one, words)), nextCursor: null };
    },
  );
}
