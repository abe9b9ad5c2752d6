// Where a probe is found on the sensors page.
import { describe, expect, test } from 'vitest';
import type { ProbeView } from '../../shared/api/probes.ts';
import { groupProbes, isWaiting } from '../../web/probe-groups.ts';

function probe(id: string, patch: Partial<ProbeView>): ProbeView {
  return {
    ...{ id, nodeId: 'n1', address: id, name: id, chamberId: null, place: null, silenceMinutes: 15 },
    ...{ outOfService: false, discoveredAt: '2026-03-02T07:00:00Z', last: null },
    ...{ battery: null, hoursAbove90Rh: null },
    ...patch,
  };
}

const chambers = [
  ['c2', 'Tent 2'],
  ['c1', 'Tent 1'],
  ['c3', 'Tent 3'],
] as const;

describe('a probe waits while it stands nowhere', () => {
  test.each<[Partial<ProbeView>, boolean, string]>([
    [{}, true, 'just heard'],
    [{ place: 'house' }, false, 'house air needs no chamber'],
    [{ chamberId: 'c1' }, false, 'in a chamber, its place not said'],
    [{ outOfService: true }, false, 'put aside on purpose'],
  ])('%j: %s (%s)', (patch, waits) => {
    expect(isWaiting(probe('p', patch))).toBe(waits);
  });
});

test('groups follow the chambers, then the house, then what is in no chamber; nothing waits twice and no group is empty', () => {
  const probes = [
    probe('house', { place: 'house' }),
    probe('one', { chamberId: 'c1', place: 'canopy' }),
    probe('two', { chamberId: 'c2', place: 'canopy' }),
    probe('film', { chamberId: 'c1', place: 'film' }),
    probe('waiting', {}),
    probe('broken', { outOfService: true }),
    probe('stray', { chamberId: 'removed', place: 'canopy' }),
  ];
  const groups = groupProbes(probes, chambers).map((group) => [group.title, group.probes.map(({ id }) => id)]);
  expect(groups).toEqual([
    ['Tent 2', ['two']],
    ['Tent 1', ['one', 'film']],
    ['House', ['house']],
    ['In no chamber', ['broken', 'stray']],
  ]);
});
