// Which probes stand where: asked at each look at a chamber, changed only when a probe is placed.
import { expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import type { Probe } from '../../../server/store/store.ts';
import { openProbeBook, type ProbeState } from '../../../server/watch/probe-book.ts';

async function openBook() {
  const store = openStore({ file: ':memory:', nowMs: 0 });
  onTestFinished(() => store.close());
  return openProbeBook(store, 0);
}

function stateOf(number: number, placement: Probe['placement']): ProbeState {
  const names = { id: `p${number}`, nodeId: `node-${number}`, address: '', name: `Probe ${number}` };
  const probe = { number, ...names, silenceMs: 60_000, outOfService: false, discoveredMs: 0, placement };
  return { probe, newest: null, calibrations: [], quality: null, watchedSinceMs: 0, countsFromMs: 0, storedToMs: 0 };
}

function placed(probe: number, chamberId: string | null, place: 'canopy' | 'house' = 'canopy') {
  return { probe, chamberId, place, fromMs: 0, toMs: null, lastMs: null };
}

const ids = (states: readonly ProbeState[]) => states.map(({ probe }) => probe.id);

test('a probe is found where it stands, in the order of all, and nowhere while it waits to be placed', async () => {
  const book = await openBook();
  for (const state of [stateOf(1, placed(1, 'a')), stateOf(2, placed(2, 'b')), stateOf(3, placed(3, 'a'))])
    book.put(state);
  book.put(stateOf(4, placed(4, null, 'house')));
  book.put(stateOf(5, null));
  expect(ids(book.inChamber('a'))).toEqual(['p1', 'p3']);
  expect(ids(book.inChamber('nowhere'))).toEqual([]);
  expect(ids(book.inHouse())).toEqual(['p4']);
});

test('a probe that is moved is found at its new place alone, one that is discovered at once, and each with its newest state', async () => {
  const book = await openBook();
  const first = stateOf(1, placed(1, 'a'));
  book.put(first);
  expect(ids(book.inChamber('a'))).toEqual(['p1']);
  book.put({ ...first, watchedSinceMs: 7 });
  expect(book.inChamber('a')[0]?.watchedSinceMs).toBe(7);
  book.put(stateOf(1, placed(1, 'b')));
  book.put(stateOf(2, placed(2, 'a')));
  expect([ids(book.inChamber('a')), ids(book.inChamber('b'))]).toEqual([['p2'], ['p1']]);
  book.put(stateOf(2, null));
  expect(book.inChamber('a')).toEqual([]);
});
