// Memories of the quality tests in the store: found from an instant on, written with the readings or not at all.
import { describe, expect, it } from 'vitest';
import type { Store } from '../../../server/store/store.ts';
import { emptyProbeQualityMemory } from '../../../shared/readings/quality/judge-reading.ts';
import { openTestStore, readRange, storedReading } from '../../support/open-test-store.ts';

const memory = (timeMs: number) => ({ ...emptyProbeQualityMemory, timeMs });
const slots = async (store: Store, probe: number, atMs: number) =>
  (await store.readings.checkpoints(probe, atMs)).map(({ slotMs }) => slotMs);

async function openWithCheckpoints() {
  const { store } = await openTestStore();
  const at = (probe: number, slotMs: number) => ({ probe, slotMs, memory: memory(slotMs - 1) });
  await store.commit({ checkpoints: [at(1, 300), at(1, 100), at(1, 200), at(2, 150)] });
  return store;
}

describe('checkpoints', () => {
  it.each([
    [1, 99, [100, 200, 300], 'none is so old: all later ones'],
    [1, 100, [100, 200, 300], 'the one of that instant'],
    [1, 199, [100, 200, 300], 'the last before it, and all later ones'],
    [1, 200, [200, 300], 'the next slot'],
    [1, 999, [300], 'the newest'],
    [2, 999, [150], 'those of another probe are its own'],
    [3, 999, [], 'a probe that has none'],
  ])('of probe %i from %i on are %j: %s', async (probe, atMs, expected) => {
    expect(await slots(await openWithCheckpoints(), probe, atMs)).toEqual(expected);
  });

  it('come back as they were written, the last one of a slot', async () => {
    const store = await openWithCheckpoints();
    await store.commit({ checkpoints: [{ probe: 1, slotMs: 300, memory: memory(42) }] });
    expect(await store.readings.checkpoints(1, 300)).toEqual([{ slotMs: 300, memory: memory(42) }]);
  });

  it('are not there when their readings could not be stored', async () => {
    const store = await openWithCheckpoints();
    const unreadable = { ...storedReading({ timeMs: 1 }), probe: Number.NaN };
    const commit = store.commit({
      readings: [storedReading({ timeMs: 0 }), unreadable],
      checkpoints: [{ probe: 9, slotMs: 0, memory: memory(0) }],
    });
    await expect(commit).rejects.toThrow();
    expect(await slots(store, 9, 0)).toEqual([]);
    expect(await readRange(store)).toEqual([]);
  });
});

describe('the places of a probe', () => {
  it('are all of them, oldest first', async () => {
    const { store } = await openTestStore();
    const rest = { nodeId: 'n', address: '', name: 'P', silenceMs: 1, outOfService: false, discoveredMs: 0 };
    await store.probes.add({ number: 1, id: 'p1', ...rest, placement: null });
    await store.chambers.add({ id: 't', name: 'Tent', createdMs: 0 });
    await store.probes.place(1, { chamberId: 't', place: 'film' }, 10);
    await store.probes.place(1, { chamberId: null, place: 'house' }, 20);
    expect(await store.probes.placementsOf(1)).toEqual([
      { probe: 1, chamberId: 't', place: 'film', fromMs: 10, toMs: 20, lastMs: 19 },
      { probe: 1, chamberId: null, place: 'house', fromMs: 20, toMs: null, lastMs: null },
    ]);
    expect(await store.probes.placementsOf(2)).toEqual([]);
  });

  it('share no instant: one at which a probe is moved is of the new place, one at which it is taken away of the old', async () => {
    const { store } = await openTestStore();
    const rest = { nodeId: 'n', address: '', name: 'P', silenceMs: 1, outOfService: false, discoveredMs: 0 };
    await store.probes.add({ number: 1, id: 'p1', ...rest, placement: null });
    await store.chambers.add({ id: 't', name: 'Tent', createdMs: 0 });
    const canopy = { chamberId: 't', place: 'canopy' } as const;
    await store.probes.place(1, canopy, 10);
    await store.probes.place(1, { chamberId: 't', place: 'film' }, 20);
    await store.probes.place(1, null, 30);
    await store.probes.place(1, canopy, 40);
    await store.probes.place(1, null, 40);
    await store.probes.place(1, canopy, 40);
    const placements = await store.probes.placementsOf(1);
    expect(placements.map(({ fromMs, toMs, lastMs }) => [fromMs, toMs, lastMs])).toEqual([
      [10, 20, 19],
      [20, 30, 30],
      [40, 40, 39],
      [40, null, null],
    ]);
    const inTent = async (fromMs: number, toMs: number) =>
      (await store.probes.placements('t', fromMs, toMs)).map((one) => [one.place, one.fromMs]);
    expect(await inTent(30, 31)).toEqual([['film', 20]]);
    expect(await inTent(20, 21)).toEqual([['film', 20]]);
    expect(await inTent(31, 40)).toEqual([]);
  });
});
