// Which probes a record reads, from when to when, and what it calls them.
import { describe, expect, it } from 'vitest';
import { findSources } from '../../../server/record/record-sources.ts';
import type { Placement, Probe, Store, StoredCalibration } from '../../../server/store/store.ts';

const window = { fromMs: 100, toMs: 200 };

function probe(number: number, name: string): Probe {
  const id = `p${number}`;
  return {
    number,
    id,
    nodeId: 'n',
    address: id,
    name,
    silenceMs: 10,
    outOfService: false,
    discoveredMs: 0,
    placement: null,
  };
}

const probes = [probe(1, 'Canopy'), probe(2, 'Canopy'), probe(3, 'North'), probe(4, '')];

function storeWith(
  placements: readonly Placement[],
  history: readonly StoredCalibration[] = [],
): Pick<Store, 'probes' | 'calibrations'> {
  const unused = () => Promise.reject(new Error('a record changes no probe'));
  const store = {
    list: async () => probes,
    placements: async (chamberId: string | null, fromMs: number, toMs: number) =>
      placements.filter((one) => one.chamberId === chamberId && one.fromMs < toMs && (one.lastMs ?? toMs) >= fromMs),
    nodes: unused,
    addNode: unused,
    get: unused,
    standingIn: unused,
    setNodePassword: unused,
    add: unused,
    update: unused,
    place: unused,
    placementsOf: unused,
    refused: unused,
  };
  return { probes: store, calibrations: { list: async () => [...history], add: unused } };
}

const placed = (number: number, place: Placement['place'], fromMs: number, toMs: number | null): Placement => ({
  probe: number,
  chamberId: place === 'house' ? null : 'tent',
  place,
  fromMs,
  toMs,
  lastMs: toMs,
});
const moved = (placement: Placement): Placement => ({ ...placement, lastMs: (placement.toMs ?? 0) - 1 });

async function spansOf(placements: readonly Placement[]) {
  const sources = await findSources(storeWith(placements), { chamberId: 'tent', finishedMs: null }, window);
  return sources.map(({ label, place, fromMs, toMs, placedToMs }) => [label, place, fromMs, toMs, placedToMs]);
}

describe('findSources', () => {
  it('cuts a placement that began before and still stands to the time of the batch', async () => {
    expect(await spansOf([placed(3, 'canopy', 0, null)])).toEqual([['North', 'canopy', 100, 200, 200]]);
  });

  it('leaves a reading at the instant of a move to the new place', async () => {
    expect(await spansOf([moved(placed(3, 'canopy', 0, 150)), placed(3, 'film', 150, null)])).toEqual([
      ['North', 'canopy', 100, 149, 150],
      ['North', 'film', 150, 200, 200],
    ]);
  });

  it('keeps a reading at the instant in which the probe was taken away', async () => {
    expect(await spansOf([placed(3, 'canopy', 0, 150)])).toEqual([['North', 'canopy', 100, 150, 150]]);
  });

  it('takes a probe that was placed at the very end, and one taken away at the very start, not one that moved then', async () => {
    const placements = [
      placed(3, 'canopy', 200, null),
      placed(4, 'canopy', 0, 100),
      moved(placed(1, 'canopy', 0, 100)),
    ];
    expect(await spansOf(placements)).toEqual([
      ['North', 'canopy', 200, 200, 200],
      ['p4', 'canopy', 100, 100, 100],
    ]);
  });

  it('puts canopy first and house last, whatever their numbers', async () => {
    const places = (
      await spansOf([placed(1, 'film', 0, null), placed(3, 'canopy', 0, null), placed(2, 'house', 0, null)])
    ).map(([, place]) => place);
    expect(places).toEqual(['canopy', 'film', 'house']);
  });

  it('tells probes of one name apart by their ids, and calls one without a name by its id', async () => {
    const placements = [placed(1, 'canopy', 0, null), placed(3, 'canopy', 0, null), placed(4, 'canopy', 0, null)];
    expect((await spansOf(placements)).map(([label]) => label)).toEqual(['Canopy (p1)', 'North', 'p4']);
  });

  const entry = (probe: number, fromMs: number, enteredMs: number): StoredCalibration => {
    const correction = { kind: 'offset', fromMs, temperature: { offset: 0.2 } } as const;
    return { id: enteredMs, probe, correction, note: '', person: 'Noor', enteredMs };
  };

  it.each([
    ['entered while the batch was open', entry(3, 50, 150), 1],
    ['entered at the instant it was finished', entry(3, 50, 200), 1],
    ['entered after it was finished, however early it begins', entry(3, 50, 201), 0],
    ['that begins after the end', entry(3, 201, 150), 0],
    ['of another probe', entry(4, 50, 150), 0],
  ])('counts a calibration %s so', async (_, calibration, counted) => {
    const store = storeWith([placed(3, 'canopy', 0, null)], [calibration]);
    const [source] = await findSources(store, { chamberId: 'tent', finishedMs: 200 }, window);
    expect(source?.history).toEqual([calibration].slice(0, counted));
    expect(source?.calibrations).toEqual([calibration.correction].slice(0, counted));
  });
});
