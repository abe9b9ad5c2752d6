// The one-minute roll-up against a recomputation from the readings, after whatever can happen to readings: new, late, repeated, completed, revised.
import type { Database } from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClimateBucket, Commit, Store } from '../../../server/store/store.ts';
import { FLAG, type Flag } from '../../../shared/readings/reading.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openTestStore, type StoredReading, storedReading } from '../../support/open-test-store.ts';

/** A whole hour; larger than 2^31, as every time of ours is. */
const START = 1_750_003_200_000;
const MINUTES = 6;

const value = fc.integer({ min: -100, max: 1_000 }).map((tenths) => tenths / 10);
const flag = fc.constantFrom<Flag>(FLAG.pass, FLAG.notEvaluated, FLAG.suspect, FLAG.fail);
const half = fc.option(fc.record({ value, flag }), { freq: 4 });
// Few instants, so that repeats and completions are common.
const instant = fc.integer({ min: 0, max: MINUTES * 6 - 1 }).map((n) => START + n * 10_000);

const reading = fc
  .record({ probe: fc.constantFrom(1, 2), timeMs: instant, temperature: half, humidity: half, late: fc.boolean() })
  .filter(({ temperature, humidity }) => temperature !== null || humidity !== null)
  .map(({ probe, timeMs, temperature, humidity, late }) =>
    storedReading({
      ...{ probe, timeMs, late },
      temperature: temperature?.value ?? null,
      humidity: humidity?.value ?? null,
      temperatureFlag: temperature?.flag ?? FLAG.missing,
      humidityFlag: humidity?.flag ?? FLAG.missing,
    }),
  );
const revision = fc.record({
  probe: fc.constantFrom(1, 2),
  timeMs: instant,
  temperatureFlag: flag,
  humidityFlag: flag,
});
const commits = fc.array(
  fc.record({ readings: fc.array(reading, { maxLength: 25 }), revised: fc.array(revision, { maxLength: 4 }) }),
  { minLength: 1, maxLength: 8 },
);

/** What the store should hold, by the rules alone. */
class Model {
  readonly #readings = new Map<string, StoredReading>();

  /** Answers with the commit as it can happen: a revision is of a reading that is there, and no flag comes to a half that is not. */
  take({ readings = [], revised = [] }: Commit): Commit {
    for (const one of readings) this.#add(one);
    const possible = revised.flatMap((one) => {
      const known = this.#readings.get(`${one.probe} ${one.timeMs}`);
      if (known === undefined) return [];
      const temperatureFlag = known.temperature === null ? FLAG.missing : one.temperatureFlag;
      const humidityFlag = known.humidity === null ? FLAG.missing : one.humidityFlag;
      this.#readings.set(`${one.probe} ${one.timeMs}`, { ...known, temperatureFlag, humidityFlag });
      return [{ ...one, temperatureFlag, humidityFlag }];
    });
    return { readings, revised: possible };
  }

  #add(one: StoredReading): void {
    const key = `${one.probe} ${one.timeMs}`;
    const known = this.#readings.get(key);
    if (known === undefined) return void this.#readings.set(key, one);
    const warm = known.temperature === null ? one : known;
    const moist = known.humidity === null ? one : known;
    this.#readings.set(key, {
      ...known,
      temperature: warm.temperature,
      temperatureFlag: warm.temperatureFlag,
      humidity: moist.humidity,
      humidityFlag: moist.humidityFlag,
    });
  }

  /** The buckets of a probe, worked out reading by reading. */
  buckets(probe: number, fromMs: number, bucketMs: number, count: number): ClimateBucket[] {
    return Array.from({ length: count }, (_, index) => {
      const start = fromMs + index * bucketMs;
      const inside = [...this.#readings.values()].filter(
        (one) => one.probe === probe && one.timeMs >= start && one.timeMs < start + bucketMs,
      );
      return describeBucket(index, inside);
    }).filter(({ readings }) => readings > 0);
  }

  count(): number {
    return this.#readings.size;
  }
}

function describeBucket(index: number, readings: readonly StoredReading[]): ClimateBucket {
  const isGood = (one: Flag) => one === FLAG.pass || one === FLAG.notEvaluated;
  const isBad = (one: Flag) => one === FLAG.suspect || one === FLAG.fail;
  const summarise = (values: readonly number[]) => {
    if (values.length === 0) return null;
    // Summed as ten-thousandths, as the file keeps them: sums of decimals depend on their order.
    const sum = values.reduce((total, one) => total + Math.round(one * 10_000), 0) / 10_000;
    return { min: Math.min(...values), max: Math.max(...values), sum, count: values.length };
  };
  return {
    index,
    temperature: summarise(readings.flatMap((one) => (isGood(one.temperatureFlag) ? (one.temperature ?? []) : []))),
    humidity: summarise(readings.flatMap((one) => (isGood(one.humidityFlag) ? (one.humidity ?? []) : []))),
    readings: readings.length,
    bad: readings.filter((one) => isBad(one.temperatureFlag) || isBad(one.humidityFlag)).length,
  };
}

function emptyReadings(db: Database): void {
  db.exec('DELETE FROM readings; DELETE FROM minutes');
}

async function fill(store: Store, wanted: readonly Commit[]): Promise<Model> {
  const model = new Model();
  for (const commit of wanted) await store.commit(model.take(commit));
  return model;
}

describe('the roll-up', () => {
  it('equals a recomputation after any run of readings and revisions', async () => {
    const { store, db } = await openTestStore();
    await fc.assert(
      fc.asyncProperty(commits, async (wanted) => {
        emptyReadings(db);
        const model = await fill(store, wanted);
        for (const probe of [1, 2]) {
          const grid = { fromMs: START, bucketMs: MINUTE_MS, count: MINUTES };
          expect(await store.readings.buckets(probe, grid)).toEqual(model.buckets(probe, START, MINUTE_MS, MINUTES));
        }
        expect(await store.readings.countAll()).toBe(model.count());
      }),
      { numRuns: 150 },
    );
  });
});

describe('buckets', () => {
  it.each([
    ['a minute, from the roll-up', START, MINUTE_MS, MINUTES],
    ['two minutes, from the roll-up', START, 2 * MINUTE_MS, 3],
    ['four minutes that begin before the first reading', START - 2 * MINUTE_MS, 4 * MINUTE_MS, 3],
    ['all in one', START - 60 * MINUTE_MS, 120 * MINUTE_MS, 1],
    ['a part of the time only', START + 2 * MINUTE_MS, MINUTE_MS, 2],
    ['ten seconds, from the readings', START, 10_000, 36],
    ['seven seconds that begin in the middle of a minute', START + 5_000, 7_000, 40],
    ['a minute that begins in the middle of a minute', START + 30_000, MINUTE_MS, 5],
  ])('are the same from minutes and from readings: %s', async (_why, fromMs, bucketMs, count) => {
    const { store, db } = await openTestStore();
    await fc.assert(
      fc.asyncProperty(commits, async (wanted) => {
        emptyReadings(db);
        const model = await fill(store, wanted);
        const buckets = await store.readings.buckets(1, { fromMs, bucketMs, count });
        expect(buckets).toEqual(model.buckets(1, fromMs, bucketMs, count));
      }),
      { numRuns: 25 },
    );
  });
});
