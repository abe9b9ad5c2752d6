// Readings in the store: once for a probe and a time, completed but never changed, read back in order however many there are.
import { describe, expect, it } from 'vitest';
import { FLAG } from '../../../shared/readings/reading.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openTestStore, readRange, storedReading } from '../../support/open-test-store.ts';

const T = 1_750_000_020_000;

describe('a reading', () => {
  it('comes back as it was given', async () => {
    const { store } = await openTestStore();
    const given = storedReading({
      timeMs: T,
      temperature: 21.4321,
      humidity: 93.1,
      receivedMs: T + 180_000,
      late: true,
    });
    expect(await store.commit({ readings: [given] })).toEqual({ stored: [true] });
    const { probe: _, ...reading } = given;
    expect(await readRange(store)).toEqual([reading]);
    expect(await store.readings.newest(1)).toEqual(reading);
  });

  it('may be dated a little ahead of its arrival', async () => {
    const { store } = await openTestStore();
    await store.commit({ readings: [storedReading({ timeMs: T, receivedMs: T - 240_000 })] });
    expect(await store.readings.newest(1)).toMatchObject({ timeMs: T, receivedMs: T - 240_000 });
  });

  it('is stored once: whatever else is said of the same probe and time changes nothing', async () => {
    const { store } = await openTestStore();
    const first = storedReading({ timeMs: T, temperature: 21, humidity: 95 });
    await store.commit({ readings: [first] });
    const repeats = [
      first,
      storedReading({ timeMs: T, temperature: 30, humidity: 50, late: true, receivedMs: T + MINUTE_MS }),
      storedReading({ timeMs: T, temperature: null, humidity: 50 }),
    ];
    expect(await store.commit({ readings: repeats })).toEqual({ stored: [false, false, false] });
    expect(await readRange(store)).toMatchObject([{ temperature: 21, humidity: 95, receivedMs: T, late: false }]);
    expect(await store.readings.countAll()).toBe(1);
  });

  it('is another one at another probe or another millisecond', async () => {
    const { store } = await openTestStore();
    const readings = [{ timeMs: T }, { timeMs: T + 1 }, { timeMs: T, probe: 2 }].map(storedReading);
    expect(await store.commit({ readings })).toEqual({ stored: [true, true, true] });
    expect(await readRange(store)).toHaveLength(2);
    expect(await readRange(store, 2)).toHaveLength(1);
  });

  it.each([
    ['temperature first', { temperature: 21, humidity: null }, { temperature: null, humidity: 95 }],
    ['humidity first', { temperature: null, humidity: 95 }, { temperature: 21, humidity: null }],
    ['the second brings both', { temperature: 21, humidity: null }, { temperature: 30, humidity: 95 }],
  ])('is completed by its missing half, and keeps when it came first: %s', async (_why, first, second) => {
    const { store } = await openTestStore();
    await store.commit({ readings: [storedReading({ timeMs: T, ...first })] });
    const later = storedReading({ timeMs: T, ...second, receivedMs: T + 300_000, late: true });
    expect(await store.commit({ readings: [later] })).toEqual({ stored: [true] });
    expect(await readRange(store)).toEqual([
      {
        timeMs: T,
        temperature: 21,
        humidity: 95,
        temperatureFlag: FLAG.pass,
        humidityFlag: FLAG.pass,
        receivedMs: T,
        late: false,
      },
    ]);
  });

  it('takes over the flag of the half that completes it and leaves the other', async () => {
    const { store } = await openTestStore();
    const first = storedReading({ timeMs: T, humidity: null, temperatureFlag: FLAG.suspect });
    const second = storedReading({ timeMs: T, temperature: null, humidityFlag: FLAG.fail });
    await store.commit({ readings: [first, second] });
    expect(await readRange(store)).toMatchObject([{ temperatureFlag: FLAG.suspect, humidityFlag: FLAG.fail }]);
  });

  it('has its flags changed by a later judgement, and nothing else', async () => {
    const { store } = await openTestStore();
    await store.commit({ readings: [storedReading({ timeMs: T, late: true, receivedMs: T + 200_000 })] });
    const flags = { temperatureFlag: FLAG.fail, humidityFlag: FLAG.suspect };
    await store.commit({ revised: [{ probe: 1, timeMs: T, ...flags }] });
    expect(await readRange(store)).toEqual([
      { timeMs: T, temperature: 21, humidity: 95, receivedMs: T + 200_000, late: true, ...flags },
    ]);
  });
});

describe('range', () => {
  it.each([4_999, 5_000, 5_001, 10_000, 12_345])('gives %d readings in order across its pages', async (count) => {
    const { store } = await openTestStore();
    await store.commit({ readings: Array.from({ length: count }, (_, n) => storedReading({ timeMs: T + n })) });
    const times = (await readRange(store)).map(({ timeMs }) => timeMs);
    expect(times).toHaveLength(count);
    expect(times.every((timeMs, n) => timeMs === T + n)).toBe(true);
  });

  it('includes both ends and nothing beyond, and only its probe', async () => {
    const { store } = await openTestStore();
    const readings = [0, 1, 2, 3, 4].flatMap((n) => [1, 2].map((probe) => storedReading({ timeMs: T + n, probe })));
    await store.commit({ readings });
    expect((await readRange(store, 2, T + 1, T + 3)).map(({ timeMs }) => timeMs - T)).toEqual([1, 2, 3]);
    expect(await readRange(store, 3)).toEqual([]);
  });

  it('gives what was there when it got there: a reading that comes meanwhile neither breaks nor doubles it', async () => {
    const { store } = await openTestStore();
    await store.commit({ readings: Array.from({ length: 6_000 }, (_, n) => storedReading({ timeMs: T + 2 * n })) });
    const seen: number[] = [];
    for await (const { timeMs } of store.readings.range(1, 0, Number.MAX_SAFE_INTEGER)) {
      seen.push(timeMs - T);
      if (seen.length === 10)
        await store.commit({ readings: [storedReading({ timeMs: T + 3 }), storedReading({ timeMs: T + 11_001 })] });
    }
    expect(seen).toHaveLength(6_001);
    expect(new Set(seen).size).toBe(6_001);
    expect(seen).toContain(11_001);
  });
});

describe('newest', () => {
  it('is the one measured last, not the one that came last; null when there is none', async () => {
    const { store } = await openTestStore();
    expect(await store.readings.newest(1)).toBeNull();
    await store.commit({ readings: [storedReading({ timeMs: T + 5 })] });
    await store.commit({ readings: [storedReading({ timeMs: T, receivedMs: T + 900_000, late: true })] });
    expect(await store.readings.newest(1)).toMatchObject({ timeMs: T + 5 });
  });
});

describe('mean', () => {
  it('is of the good readings of whole minutes, each quantity for itself', async () => {
    const { store } = await openTestStore();
    await store.commit({
      readings: [
        storedReading({ timeMs: T, temperature: 20, humidity: 90 }),
        storedReading({ timeMs: T + 1_000, temperature: 23, humidity: null }),
        storedReading({ timeMs: T + 2_000, temperature: 99, humidity: 96, temperatureFlag: FLAG.suspect }),
        storedReading({ timeMs: T + MINUTE_MS, temperature: 50, humidity: 50 }),
      ],
    });
    expect(await store.readings.mean(1, T, T + MINUTE_MS)).toEqual({ temperature: 21.5, humidity: 93 });
    expect(await store.readings.mean(1, T - MINUTE_MS, T)).toEqual({ temperature: null, humidity: null });
  });
});
