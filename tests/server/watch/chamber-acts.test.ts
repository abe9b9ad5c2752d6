// What people do to chambers and probes: place, move, take away, rename, remove; and what becomes of the air a probe measured elsewhere.
import { describe, expect, it } from 'vitest';
import type { ChamberView } from '../../../shared/api/chambers.ts';
import type { ProblemCode } from '../../../shared/problem.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openHotTent, openTent, TENT_MS, type Tent } from '../../support/open-tent.ts';

async function refused(act: Promise<unknown>, code: ProblemCode, text: RegExp): Promise<void> {
  await expect(act).rejects.toMatchObject({ name: 'Problem', code, message: expect.stringMatching(text) });
}

const acts = (tent: Tent) => tent.app.parts.chamberActs;

async function climateOf(tent: Tent, chamberId: string) {
  return (await tent.api.get<ChamberView>(`/chambers/${chamberId}`)).body.climate;
}

describe('chambers', () => {
  it('have a name of their own, whatever its letters’ case', async () => {
    const tent = await openTent();
    await refused(acts(tent).addChamber('tent 1'), 'conflict', /has this name already/);
    const { id } = await acts(tent).addChamber('Tent 2');
    await refused(acts(tent).renameChamber(id, 'TENT 1'), 'conflict', /has this name already/);
    await acts(tent).renameChamber(id, 'Tent two');
    await acts(tent).renameChamber(id, 'TENT TWO');
    const names = (await tent.api.get<{ items: ChamberView[] }>('/chambers')).body.items.map(({ name }) => name);
    expect(names.sort()).toEqual(['TENT TWO', 'Tent 1']);
  });

  it('that do not exist are neither renamed nor removed', async () => {
    const tent = await openTent();
    await refused(acts(tent).renameChamber('nowhere', 'X'), 'not-found', /no such chamber/);
    await refused(acts(tent).removeChamber('nowhere'), 'not-found', /no such chamber/);
  });

  it('with a batch in them are not removed', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await refused(acts(tent).removeChamber(tent.chamberId), 'conflict', /A batch is in this chamber: finish it first/);
    expect(await tent.app.store.chambers.list()).toHaveLength(1);
  });

  it('that have had a batch are retired: out of sight, their name free, nothing lost from their records', async () => {
    const tent = await openHotTent();
    await tent.app.parts.batchActs.finish(tent.batch.id, 900, '', 'Ann');
    const record = async () => (await tent.api.text(`/batches/${tent.batch.id}/record.csv`)).body;
    tent.clock.advance(SECOND_MS);
    const before = await record();
    expect(before).toContain('reading,2026-03-01T12:00:00Z');
    await acts(tent).removeChamber(tent.chamberId);
    expect(await record()).toBe(before);
    const again = await acts(tent).addChamber('Tent 1');
    const shown = async ({ api }: Tent) =>
      (await api.get<{ items: ChamberView[] }>('/chambers')).body.items.map(({ id }) => id);
    expect(await shown(tent)).toEqual([again.id]);
    expect((await tent.api.get(`/chambers/${tent.chamberId}`)).status).toBe(404);
    await refused(acts(tent).removeChamber(tent.chamberId), 'not-found', /no such chamber/);
    const later = await tent.reopen();
    expect(await shown(later)).toEqual([again.id]);
    expect((await later.api.get(`/batches/${tent.batch.id}`)).body).toMatchObject({ chamberName: 'Tent 1' });
    expect((await later.api.get('/alarms')).body).toMatchObject({ items: [{ rule: 'heat', chamberName: 'Tent 1' }] });
  });

  it('that were retired come back under a free name, with their batches and none of the alarms from then', async () => {
    const tent = await openHotTent();
    await tent.app.parts.batchActs.finish(tent.batch.id, 900, '', 'Ann');
    await acts(tent).removeChamber(tent.chamberId);
    await acts(tent).addChamber('Tent 1');
    const retired = async () => (await tent.api.get<{ items: object[] }>('/retired-chambers')).body.items;
    expect(await retired()).toMatchObject([{ id: tent.chamberId, name: 'Tent 1' }]);
    await refused(acts(tent).bringBackChamber(tent.chamberId, 'Tent 1'), 'conflict', /name/);
    await refused(acts(tent).bringBackChamber('nowhere', 'Tent 2'), 'not-found', /no such chamber/);
    await acts(tent).bringBackChamber(tent.chamberId, 'Tent 2');
    await tent.app.tick();
    expect(await retired()).toEqual([]);
    const back = async ({ api }: Tent) => (await api.get<ChamberView>(`/chambers/${tent.chamberId}`)).body;
    expect(await back(tent)).toMatchObject({ name: 'Tent 2', batch: null, alarms: [] });
    expect((await tent.api.get(`/batches/${tent.batch.id}`)).body).toMatchObject({ chamberName: 'Tent 2' });
    expect(await back(await tent.reopen())).toMatchObject({ name: 'Tent 2', batch: null });
  });

  it('that are removed set their probes free', async () => {
    const tent = await openTent();
    await acts(tent).removeChamber(tent.chamberId);
    const probes = await tent.api.get<{ items: object[] }>('/probes');
    expect(probes.body.items).toMatchObject([{ id: tent.probeId, chamberId: null, place: null }]);
    const again = await tent.reopen();
    expect((await again.api.get<{ items: object[] }>('/chambers')).body.items).toEqual([]);
  });
});

describe('adding a probe', () => {
  it('places it at once where it is to stand', async () => {
    const tent = await openTent();
    const probe = await acts(tent).addProbe({ nodeId: 'n2', address: 'b', chamberId: tent.chamberId, place: 'film' });
    expect(probe).toMatchObject({ nodeId: 'n2', address: 'b', name: 'n2 b' });
    const [, stored] = await tent.app.store.probes.list();
    expect(stored?.placement).toMatchObject({ chamberId: tent.chamberId, place: 'film', fromMs: TENT_MS });
  });

  it('may leave it waiting to be placed, under a name of its own', async () => {
    const tent = await openTent();
    await acts(tent).addProbe({ nodeId: 'n2', address: '', name: 'Spare' });
    expect((await tent.app.store.probes.list())[1]).toMatchObject({ name: 'Spare', placement: null });
  });

  it.each([
    { why: 'known already', probe: { nodeId: 'n1', address: 'a' }, code: 'conflict', text: /known already/ },
    {
      why: 'in no such chamber',
      probe: { nodeId: 'n2', address: 'b', chamberId: 'nowhere' },
      code: 'not-found',
      text: /no such chamber/,
    },
    {
      why: 'in the canopy of no chamber',
      probe: { nodeId: 'n2', address: 'b', place: 'canopy' },
      code: 'bad-input',
      text: /in which chamber/,
    },
  ] as const)('is refused whole: $why', async ({ probe, code, text }) => {
    const tent = await openTent();
    await refused(acts(tent).addProbe(probe), code, text);
    expect(await tent.app.store.probes.list()).toHaveLength(1);
  });
});

describe('placing', () => {
  it.each([
    {
      change: { place: 'film' },
      stands: { place: 'film', chamberId: 'here' },
      why: 'another place in the same chamber',
    },
    { change: { place: 'house' }, stands: { place: 'house', chamberId: null }, why: 'the house is no chamber' },
    { change: { place: null }, stands: null, why: 'taken away' },
    { change: { chamberId: null }, stands: null, why: 'taken out of its chamber' },
    { change: {}, stands: { place: 'canopy', chamberId: 'here' }, why: 'nothing said, nothing moved' },
  ] as const)('$change: $why', async ({ change, stands }) => {
    const tent = await openTent();
    await acts(tent).changeProbe(tent.probeId, change);
    const [probe] = await tent.app.store.probes.list();
    const chamberId = stands?.chamberId === 'here' ? tent.chamberId : null;
    if (stands === null) expect(probe?.placement).toBeNull();
    else expect(probe?.placement).toMatchObject({ place: stands.place, chamberId });
  });

  it('out of the house into a chamber is into its canopy unless said otherwise', async () => {
    const tent = await openTent();
    await acts(tent).changeProbe(tent.probeId, { place: 'house' });
    await refused(acts(tent).changeProbe(tent.probeId, { place: 'film' }), 'bad-input', /in which chamber/);
    await acts(tent).changeProbe(tent.probeId, { place: 'canopy', chamberId: tent.chamberId });
    expect((await tent.app.store.probes.list())[0]?.placement).toMatchObject({ place: 'canopy' });
  });

  it('is refused in no such chamber, and for no such probe', async () => {
    const tent = await openTent();
    await refused(acts(tent).changeProbe(tent.probeId, { chamberId: 'nowhere' }), 'not-found', /no such chamber/);
    await refused(acts(tent).changeProbe('p99', { name: 'X' }), 'not-found', /no such probe/);
  });

  it('keeps where a probe stood before, for the records of that time', async () => {
    const tent = await openTent();
    tent.clock.advance(MINUTE_MS);
    const other = await acts(tent).addChamber('Tent 2');
    await acts(tent).changeProbe(tent.probeId, { chamberId: other.id });
    const before = await tent.app.store.probes.placements(tent.chamberId, TENT_MS, TENT_MS + MINUTE_MS);
    expect(before).toMatchObject([{ probe: 1, place: 'canopy', fromMs: TENT_MS, toMs: TENT_MS + MINUTE_MS }]);
  });

  it('a probe heard before it was placed gives the chamber its climate at once: it stood there already', async () => {
    const tent = await openTent();
    await tent.measure(23.5, 92, 'fresh');
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({ temperature: null });
    tent.clock.advance(SECOND_MS);
    await acts(tent).changeProbe('p2', { chamberId: tent.chamberId });
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({ temperature: 23.5, healthyProbes: 1 });
  });

  it('a probe counts as placed before it has spoken, and its chamber says since when none was heard', async () => {
    const tent = await openTent();
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({ canopyProbes: 1, healthyProbes: 0, heardAt: null });
    await acts(tent).addProbe({ nodeId: 'n1', address: 'b', chamberId: tent.chamberId });
    await acts(tent).addProbe({ nodeId: 'n1', address: 'film', chamberId: tent.chamberId, place: 'film' });
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({ canopyProbes: 2, healthyProbes: 0, heardAt: null });
    await tent.measure(23);
    tent.clock.advance(HOUR_MS);
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({
      ...{ canopyProbes: 2, healthyProbes: 0, at: null, heardAt: utcText(TENT_MS) },
    });
  });

  it('a probe that is moved leaves the air of its old place behind: no chamber is judged by another’s', async () => {
    const tent = await openTent();
    const other = await acts(tent).addChamber('Tent 2');
    await acts(tent).addProbe({ nodeId: 'n1', address: 'b', chamberId: other.id });
    await openBatch(tent, { chamberId: other.id });
    await tent.measure(24, 95, 'b');
    await tent.measure(30, 95);
    tent.clock.advance(SECOND_MS);
    await acts(tent).changeProbe(tent.probeId, { chamberId: other.id });
    expect(await climateOf(tent, other.id)).toMatchObject({ hottest: 24, healthyProbes: 1, canopyProbes: 2 });
    tent.clock.advance(2 * MINUTE_MS);
    await tent.app.tick();
    expect(await tent.alarms()).toEqual([]);
    await tent.measure(25, 95);
    expect(await climateOf(tent, other.id)).toMatchObject({ hottest: 25, healthyProbes: 2 });
  });

  it('a probe taken away and put up elsewhere does so as well, also after a restart', async () => {
    const tent = await openTent();
    const other = await acts(tent).addChamber('Tent 2');
    await tent.measure(30, 95);
    tent.clock.advance(SECOND_MS);
    await acts(tent).changeProbe(tent.probeId, { place: null });
    await acts(tent).changeProbe(tent.probeId, { chamberId: other.id });
    expect(await climateOf(tent, other.id)).toMatchObject({ hottest: null });
    const again = await tent.reopen(SECOND_MS);
    expect(await climateOf(again, other.id)).toMatchObject({ hottest: null });
  });
});

describe('out of service', () => {
  it('a probe neither measures nor is silent, and its alarm is over', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await acts(tent).addProbe({ nodeId: 'n1', address: 'b', chamberId: tent.chamberId });
    tent.clock.advance(10 * MINUTE_MS + 1);
    await tent.measure(24, 95, 'b');
    expect((await tent.alarms()).map(({ rule, state }) => `${rule} ${state}`)).toEqual(['silent-probe unacknowledged']);
    await acts(tent).changeProbe(tent.probeId, { outOfService: true });
    expect((await tent.alarms()).map(({ rule, state }) => `${rule} ${state}`)).toEqual([
      'silent-probe returned-unacknowledged',
    ]);
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({ canopyProbes: 1, healthyProbes: 1 });
  });

  it('a chamber whose only probe is out of service is measured by nobody', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(24);
    await acts(tent).changeProbe(tent.probeId, { outOfService: true });
    expect(await climateOf(tent, tent.chamberId)).toMatchObject({ temperature: null });
    tent.clock.advance(MINUTE_MS);
    await tent.app.tick();
    expect((await tent.alarms()).map(({ rule }) => rule)).toEqual(['silent-chamber']);
  });
});

describe('the silence a probe is allowed', () => {
  it('counts from the moment it is changed', async () => {
    const tent = await openTent();
    await openBatch(tent);
    await tent.measure(24);
    tent.clock.advance(5 * MINUTE_MS + 1);
    await tent.app.tick();
    expect(await tent.alarms()).toEqual([]);
    await acts(tent).changeProbe(tent.probeId, { silenceMinutes: 5, name: 'Middle' });
    expect(await tent.alarms()).toMatchObject([{ rule: 'silent-probe', probeName: 'Middle', limit: 5 }]);
    await acts(tent).changeProbe(tent.probeId, { silenceMinutes: 6 });
    expect(await tent.alarms()).toMatchObject([{ state: 'returned-unacknowledged' }]);
  });
});
