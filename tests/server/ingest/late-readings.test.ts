// Readings that come late, twice, in halves or after a restart, on a real store: values, flags and roll-ups end up as if everything had come
// whole and in order of time.
import type { Database } from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { admitReadings } from '../../../server/ingest/admit-readings.ts';
import { openSite } from '../../../server/site.ts';
import type { Store } from '../../../server/store/store.ts';
import { openProbeBook } from '../../../server/watch/probe-book.ts';
import { silentTelling } from '../../../server/watch/teller.ts';
import { openWatch } from '../../../server/watch/watch.ts';
import { FLAG } from '../../../shared/readings/reading.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openTestStore, readRange } from '../../support/open-test-store.ts';
import { createTestClock } from '../../support/test-clock.ts';

const START_MS = Date.parse('2026-03-01T03:00:00Z');
const NOW_MS = START_MS + 400 * HOUR_MS;

interface Measured {
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

/** The service's admission on a store; `restart` forgets everything that is not stored. */
async function openAdmission(store: Store) {
  const clock = createTestClock(NOW_MS);
  let arrivalMs = NOW_MS;
  const site = await openSite(store);
  const start = async () => {
    const probes = await openProbeBook(store, arrivalMs);
    return { store, site, clock, watch: await openWatch({ store, site, probes, telling: silentTelling }) };
  };
  let parts = await start();
  return {
    async restart() {
      parts = await start();
    },
    /** The clock of the machine is set back to an instant. */
    setBack(toMs: number) {
      parts.watch.moveClock(toMs - arrivalMs, toMs).apply();
      arrivalMs = toMs;
      clock.set(toMs);
    },
    newest: () => parts.watch.probes.byId('p1')?.newest ?? null,
    /** Each list is one message; all of them are one group. */
    admit: (...messages: readonly (readonly Measured[])[]) =>
      admitReadings(
        messages.map((readings) => {
          const list = readings.map(({ timeMs, temperature, humidity }) => ({
            time: timeMs / SECOND_MS,
            ...(temperature !== null && { temperature }),
            ...(humidity !== null && { humidity }),
          }));
          const payload = Buffer.from(JSON.stringify(list));
          return { topic: 'takewell/v1/n1/readings', payload, arrivalMs, retained: false };
        }),
        parts,
      ),
  };
}

async function stateOf(store: Store, db: Database) {
  const readings = (await readRange(store)).map(({ receivedMs: _, late: _late, ...rest }) => rest);
  return {
    readings,
    minutes: db.prepare('SELECT * FROM minutes ORDER BY probe, minute').all(),
    checkpoints: db.prepare('SELECT * FROM quality_checkpoints ORDER BY probe, slot_ms').all(),
  };
}

async function inOrder(readings: readonly Measured[]) {
  const { store, db } = await openTestStore();
  const { admit } = await openAdmission(store);
  for (const reading of readings.toSorted((a, b) => a.timeMs - b.timeMs)) await admit([reading]);
  return stateOf(store, db);
}

/** What makes the tests speak: spikes, jumps, standing still, a wet sensor, impossible values; steps to both sides of every longest gap. */
const stepMs = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(10 * SECOND_MS, MINUTE_MS, 5 * MINUTE_MS) },
  { weight: 2, arbitrary: fc.constantFrom(7 * MINUTE_MS, 40 * MINUTE_MS, 59 * MINUTE_MS) },
  { weight: 1, arbitrary: fc.constantFrom(61 * MINUTE_MS, 3 * HOUR_MS, 7 * HOUR_MS) },
);
const temperature = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(21, 21.005, 21.3) },
  { weight: 2, arbitrary: fc.constantFrom(25.5, 30, 33.12345678) },
  { weight: 1, arbitrary: fc.constantFrom(null, 85) },
);
const humidity = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(99.6, 100) },
  { weight: 3, arbitrary: fc.constantFrom(94, 94.005, 66, 52.1) },
  { weight: 1, arbitrary: fc.constantFrom(null, 103, 0) },
);
const lively = fc.record({ stepMs, temperature, humidity });
/** What one reading changes for half a day: hours on end of the same air, now and then another value. */
const still = fc.record({
  stepMs: fc.constantFrom(40 * MINUTE_MS, 59 * MINUTE_MS),
  temperature: fc.oneof({ weight: 9, arbitrary: fc.constant(21) }, { weight: 1, arbitrary: fc.constantFrom(24.5, 22) }),
  humidity: fc.oneof({ weight: 9, arbitrary: fc.constant(99.8) }, { weight: 1, arbitrary: fc.constant(97) }),
});
const series: fc.Arbitrary<Measured[]> = fc
  .oneof(fc.array(lively, { minLength: 2, maxLength: 40 }), fc.array(still, { minLength: 10, maxLength: 40 }))
  .map((steps) => {
    let timeMs = START_MS;
    return steps.flatMap(({ stepMs: step, ...values }) => {
      timeMs += step;
      return values.temperature === null && values.humidity === null ? [] : [{ timeMs, ...values }];
    });
  });

interface Arrival {
  readonly key: number;
  readonly inHalves: boolean;
  readonly otherKey: number;
  readonly again: boolean;
  readonly startsGroup: boolean;
  readonly restarts: boolean;
}
const arrival: fc.Arbitrary<Arrival> = fc.record({
  key: fc.nat(1000),
  inHalves: fc.boolean(),
  otherKey: fc.nat(1000),
  again: fc.boolean(),
  startsGroup: fc.boolean(),
  restarts: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
});

interface Part {
  readonly reading: Measured;
  readonly key: number;
  readonly how: Arrival;
}

/** The parts of all readings in the order in which they arrive. */
function scatter(readings: readonly Measured[], arrivals: readonly Arrival[]): Part[] {
  const parts = readings.flatMap((reading, index): Part[] => {
    const how = arrivals[index];
    if (how === undefined) throw new Error('every reading needs a way to arrive');
    const halves = how.inHalves
      ? [
          { reading: { ...reading, humidity: null }, key: how.key, how },
          { reading: { ...reading, temperature: null }, key: how.otherKey, how },
        ]
      : [{ reading, key: how.key, how }];
    return how.again ? [...halves, { reading, key: how.otherKey, how }] : halves;
  });
  return parts
    .filter(({ reading }) => reading.temperature !== null || reading.humidity !== null)
    .toSorted((a, b) => a.key - b.key);
}

describe('readings in any order', () => {
  it('leave the values, flags, roll-ups and memories of readings in order of time', async () => {
    await fc.assert(
      fc.asyncProperty(series, fc.array(arrival, { minLength: 40, maxLength: 40 }), async (readings, arrivals) => {
        const { store, db } = await openTestStore();
        const { admit, restart } = await openAdmission(store);
        let group: Measured[][] = [];
        for (const { reading, how } of scatter(readings, arrivals)) {
          if (how.startsGroup && group.length > 0) await admit(...group.splice(0));
          if (how.restarts && group.length === 0) await restart();
          group = [...group, [reading]];
        }
        await admit(...group);
        expect(await stateOf(store, db)).toEqual(await inOrder(readings));
      }),
      { numRuns: 40 },
    );
  });

  it('are judged in order however a pack is cut after a restart', async () => {
    await fc.assert(
      fc.asyncProperty(series, fc.nat(40), async (readings, cut) => {
        const { store, db } = await openTestStore();
        const { admit, restart } = await openAdmission(store);
        await admit(readings.slice(0, cut));
        await restart();
        await admit(readings.slice(cut));
        expect(await stateOf(store, db)).toEqual(await inOrder(readings));
      }),
      { numRuns: 15 },
    );
  });
});

const at = (minute: number, value: number, humid = 90): Measured => ({
  ...{ timeMs: START_MS + minute * MINUTE_MS, temperature: value, humidity: humid },
});

async function flagsAfter(...arrivals: readonly (readonly Measured[])[]) {
  const { store } = await openTestStore();
  const { admit } = await openAdmission(store);
  for (const readings of arrivals) await admit(readings);
  return (await readRange(store)).map(({ temperatureFlag }) => temperatureFlag);
}

describe('readings stored under a clock that was set back since', () => {
  it('leave values and flags as in order of time, and the probe at what it said last', async () => {
    await fc.assert(
      fc.asyncProperty(series, series, fc.nat(100), fc.boolean(), async (wrong, right, shift, inPacks) => {
        // Dated by the right clock the second series runs into, beside or past what the wrong clock had dated.
        const stored = new Set(wrong.map(({ timeMs }) => timeMs));
        const readings = right
          .map((one) => ({ ...one, timeMs: one.timeMs - (50 - shift) * 7 * MINUTE_MS }))
          .filter(({ timeMs }) => !stored.has(timeMs));
        fc.pre(wrong.length > 0 && readings.length > 0);
        const { store, db } = await openTestStore();
        const { admit, setBack, newest } = await openAdmission(store);
        await admit(wrong);
        const startMs = (readings[0]?.timeMs ?? 0) + 1;
        setBack(startMs);
        for (const group of inPacks ? [readings.slice(0, 3), readings.slice(3)] : readings.map((one) => [one])) {
          const last = group.at(-1);
          if (last === undefined) continue;
          setBack(last.timeMs);
          await admit(group);
          // Up to five minutes ahead is admitted as now, whoever's clock is wrong.
          const aheadMs = (newest()?.timeMs ?? 0) - last.timeMs;
          expect(aheadMs).toBeGreaterThanOrEqual(0);
          expect(aheadMs).toBeLessThanOrEqual(5 * MINUTE_MS);
        }
        expect(await stateOf(store, db)).toEqual(await inOrder([...wrong, ...readings]));
      }),
      { numRuns: 40 },
    );
  });

  it('a buffer older than all of them does not make the probe deaf until their time comes', async () => {
    const { store } = await openTestStore();
    const { admit, setBack, newest } = await openAdmission(store);
    await admit([at(120, 22), at(121, 22)]);
    setBack(at(60, 0).timeMs);
    expect(newest()).toBeNull();
    await admit([at(40, 21.5), at(41, 21.6)]);
    expect(newest()).toMatchObject(at(41, 21.6));
    await admit([at(60, 23)]);
    expect(newest()).toMatchObject(at(60, 23));
    await admit([at(50, 24)]);
    expect(newest()).toMatchObject(at(60, 23));
  });
});

describe('a late reading', () => {
  it('between a spike and what follows takes the suspicion away that the gap had raised', async () => {
    const apart = [at(0, 21), at(5, 30.2), at(10, 21.4)];
    expect(await flagsAfter(apart)).toEqual([FLAG.pass, FLAG.fail, FLAG.pass]);
    // It was truly that warm for a while: the readings between had only been held up.
    const between = [at(1, 23), at(2, 25), at(3, 27), at(4, 29), at(6, 29.5), at(7, 27.5), at(8, 25.5), at(9, 23.5)];
    expect(await flagsAfter(apart, between)).toEqual(Array.from({ length: 11 }, () => FLAG.pass));
  });

  it('that is a spike itself is found, though its neighbours came long before', async () => {
    expect(await flagsAfter([at(0, 21), at(2, 21.2)], [at(1, 26)])).toEqual([FLAG.pass, FLAG.suspect, FLAG.pass]);
  });

  it('ends a flat line that only seemed to be one', async () => {
    const flat = Array.from({ length: 45 }, (_, i) => at(i * 5, 21));
    const before = await flagsAfter(flat);
    expect(before.at(-1)).toBe(FLAG.suspect);
    const after = await flagsAfter(flat, [at(112, 21.4)]);
    expect(after).toHaveLength(46);
    expect(after.filter((flag) => flag !== FLAG.pass)).toEqual([]);
  });

  it('changes nothing beyond the reach of the tests, and asks for no more', async () => {
    const { store } = await openTestStore();
    const asked: number[] = [];
    const watching: Store = {
      ...store,
      readings: {
        ...store.readings,
        async *range(probe, fromMs, toMs) {
          for await (const one of store.readings.range(probe, fromMs, toMs)) {
            asked.push(one.timeMs);
            yield one;
          }
        },
      },
    };
    const { admit } = await openAdmission(watching);
    await admit(Array.from({ length: 72 * 4 }, (_, quarter) => at(quarter * 15, 21 + (quarter % 7) / 10)));
    await admit([at(24 * 60 + 1, 21.05)]);
    expect(asked.length).toBeGreaterThan(0);
    expect(Math.max(...asked) - START_MS).toBeLessThan(37 * HOUR_MS);
    expect(Math.min(...asked) - START_MS).toBeGreaterThan(17 * HOUR_MS);
  });

  it('that repeats what is stored has nothing judged again', async () => {
    const { store } = await openTestStore();
    let revised = 0;
    const counting: Store = {
      ...store,
      commit: (work) => {
        revised += (work.revised?.length ?? 0) + (work.readings?.length ?? 0);
        return store.commit(work);
      },
    };
    const { admit, restart } = await openAdmission(counting);
    const buffer = [at(0, 21), at(1, 26), at(2, 21)];
    await admit(buffer);
    revised = 0;
    await admit(buffer);
    await restart();
    await admit(buffer);
    expect(revised).toBe(0);
  });
});
