// Hours in wet air, counted on a real store: what a count is, when it is made anew, and that a long list is counted a few at a time.
import { describe, expect, it } from 'vitest';
import { createWetAirBook } from '../../../server/views/wet-air-book.ts';
import { openProbeBook, type ProbeState } from '../../../server/watch/probe-book.ts';
import { FLAG } from '../../../shared/readings/reading.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../../shared/units.ts';
import { openTestStore, type StoredReading, storedReading } from '../../support/open-test-store.ts';
import { createTestClock } from '../../support/test-clock.ts';

const NOW = Date.UTC(2026, 2, 31, 12);

/** A good reading each `everyMs` from `fromMs` to before `toMs`. */
function every(everyMs: number, fromMs: number, toMs: number, given: Partial<StoredReading> = {}): StoredReading[] {
  const count = Math.ceil((toMs - fromMs) / everyMs);
  return Array.from({ length: count }, (_, index) => storedReading({ ...given, timeMs: fromMs + index * everyMs }));
}

async function openNursery(probes = 1) {
  const { store } = await openTestStore();
  const clock = createTestClock(NOW);
  for (let number = 1; number <= probes; number += 1)
    await store.probes.add({
      ...{ number, id: `p${number}`, nodeId: 'n1', address: String(number), name: `p${number}` },
      ...{ silenceMs: 10 * MINUTE_MS, outOfService: false, discoveredMs: 0, placement: null },
    });
  const states = async () => [...(await openProbeBook(store, NOW)).all()];
  return { store, clock, states, book: createWetAirBook({ store, clock }) };
}

async function countOne(readings: readonly StoredReading[]): Promise<number | null> {
  const { store, states, book } = await openNursery();
  await store.commit({ readings });
  const [state] = (await states()) as [ProbeState];
  expect(book.hoursOf(state)).toBeNull();
  await book.countDue([state]);
  return book.hoursOf(state);
}

describe('hours in wet air', () => {
  const hourAgo = NOW - HOUR_MS;
  it.each<[string, StoredReading[], number]>([
    ['each minute', every(MINUTE_MS, hourAgo, NOW), 1],
    ['several in a minute', every(10_000, hourAgo, NOW), 1],
    ['exactly at the border: not above it', every(MINUTE_MS, hourAgo, NOW, { humidity: 90 }), 0],
    ['just above it', every(MINUTE_MS, hourAgo, NOW, { humidity: 90.0001 }), 1],
    ['each five minutes: each stands until the next', every(5 * MINUTE_MS, hourAgo, NOW), 1],
    ['heard once: it stands as long as the probe may be silent', every(HOUR_MS, hourAgo, NOW), 1 / 6],
    ['heard this instant: nothing has passed', every(MINUTE_MS, NOW, NOW + MINUTE_MS), 0],
    ['dated ahead', every(MINUTE_MS, NOW + HOUR_MS, NOW + 2 * HOUR_MS), 0],
    ['longer ago than thirty days', every(MINUTE_MS, NOW - 31 * DAY_MS, NOW - 31 * DAY_MS + HOUR_MS), 0],
    ['doubted', every(MINUTE_MS, hourAgo, NOW, { humidityFlag: FLAG.suspect }), 0],
    ['of temperature alone', every(MINUTE_MS, hourAgo, NOW, { humidity: null }), 0],
    ['of another probe', every(MINUTE_MS, hourAgo, NOW, { probe: 2 }), 0],
    [
      'that end in dry air, which ends what stands',
      [
        ...every(5 * MINUTE_MS, hourAgo, NOW - 30 * MINUTE_MS),
        ...every(MINUTE_MS, NOW - 30 * MINUTE_MS, NOW, { humidity: 60 }),
      ],
      0.5,
    ],
  ])('by readings %s', async (_why, readings, hours) => {
    expect(await countOne(readings)).toBeCloseTo(hours, 10);
  });
});

describe('a count', () => {
  it('stands for an hour, goes on when the probe is moved, and is made anew at once when its humidity is corrected', async () => {
    const { store, clock, states, book } = await openNursery();
    await store.commit({ readings: every(MINUTE_MS, NOW - 5 * HOUR_MS, NOW + 3 * HOUR_MS) });
    let [state] = (await states()) as [ProbeState];
    const hours = async () => {
      await book.countDue([state]);
      return book.hoursOf(state);
    };
    expect(await hours()).toBe(5);
    clock.advance(HOUR_MS - 1);
    expect(await hours()).toBe(5);
    clock.advance(1);
    expect(await hours()).toBe(6);
    const placement = { probe: 1, chamberId: null, place: 'house', fromMs: NOW, toMs: null, lastMs: null } as const;
    state = { ...state, probe: { ...state.probe, placement } };
    expect(book.hoursOf(state)).toBe(6);
    clock.advance(HOUR_MS);
    expect(await hours()).toBe(7);
    const correction = { kind: 'offset', fromMs: NOW, humidity: { offset: -2 } } as const;
    await store.calibrations.add({ probe: 1, correction, note: '', person: 'Test', enteredMs: NOW });
    [state] = (await states()) as [ProbeState];
    expect(book.hoursOf(state)).toBeNull();
    expect(await hours()).toBe(2);
  });

  it('of many probes is made a few a call, those that wait longest first, until all are counted', async () => {
    const { states, book } = await openNursery(10);
    const all = await states();
    const counted = () => all.filter((state) => book.hoursOf(state) !== null).length;
    const seen: number[] = [];
    for (let call = 0; call < 3; call += 1) {
      await book.countDue(all);
      seen.push(counted());
    }
    expect(seen).toEqual([4, 8, 10]);
  });
});
