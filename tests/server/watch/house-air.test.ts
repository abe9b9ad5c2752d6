// The air of the house: now, and as the running day mean that the end of venting is measured by. A real store; only time is given.
import { describe, expect, it, onTestFinished } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import type { Store } from '../../../server/store/store.ts';
import { createHouseWatch, houseClimate } from '../../../server/watch/house-air.ts';
import { openProbeBook, type ProbeState } from '../../../server/watch/probe-book.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../shared/units.ts';
import { openTent, TENT_MS, TENT_PROFILE } from '../../support/open-tent.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';

async function openHouse(probes: readonly { fromMs: number; place?: 'house' | 'canopy'; outOfService?: boolean }[]) {
  const store = openStore({ file: `${await makeTestFolder()}/takewell.sqlite`, nowMs: TENT_MS });
  onTestFinished(() => store.close());
  await store.chambers.add({ id: 'tent-1', name: 'Tent 1', createdMs: TENT_MS });
  for (const [index, { fromMs, place = 'house', outOfService = false }] of probes.entries()) {
    const number = index + 1;
    const rest = { silenceMs: 15 * MINUTE_MS, outOfService: false, discoveredMs: fromMs, placement: null };
    await store.probes.add({ number, id: `p${number}`, nodeId: 'n1', address: `${number}`, name: 'House', ...rest });
    await store.probes.place(number, { chamberId: place === 'house' ? null : 'tent-1', place }, fromMs);
    await store.probes.update(number, { outOfService });
  }
  return { store, probesNow: async () => [...(await openProbeBook(store, TENT_MS)).all()] };
}

/** The same air every minute from one time to another. */
async function measure(store: Store, probe: number, fromMs: number, toMs: number, temperature: number, humidity = 60) {
  const good = { temperatureFlag: 1, humidityFlag: 1, late: false } as const;
  const readings = [];
  for (let timeMs = fromMs; timeMs < toMs; timeMs += MINUTE_MS)
    readings.push({ probe, timeMs, temperature, humidity, receivedMs: timeMs, ...good });
  await store.commit({ readings });
}

async function meanAt(store: Store, probes: readonly ProbeState[], nowMs: number) {
  const watch = createHouseWatch(store);
  await watch.refresh(probes, nowMs);
  return watch.mean();
}

describe('the running day mean', () => {
  it('is not known without a probe in the house, nor before it has said anything', async () => {
    const nobody = await openHouse([{ fromMs: TENT_MS, place: 'canopy' }]);
    await measure(nobody.store, 1, TENT_MS, TENT_MS + HOUR_MS, 24);
    const none = { temperature: null, humidity: null };
    expect(await meanAt(nobody.store, await nobody.probesNow(), TENT_MS + HOUR_MS)).toEqual(none);
    const mute = await openHouse([{ fromMs: TENT_MS }]);
    expect(await meanAt(mute.store, await mute.probesNow(), TENT_MS + HOUR_MS)).toEqual(none);
  });

  it('is of the last day and no longer', async () => {
    const { store, probesNow } = await openHouse([{ fromMs: TENT_MS - 5 * DAY_MS }]);
    await measure(store, 1, TENT_MS - 2 * DAY_MS, TENT_MS - DAY_MS, 40);
    await measure(store, 1, TENT_MS - DAY_MS, TENT_MS - DAY_MS / 2, 20, 50);
    await measure(store, 1, TENT_MS - DAY_MS / 2, TENT_MS, 24, 70);
    expect(await meanAt(store, await probesNow(), TENT_MS)).toEqual({ temperature: 22, humidity: 60 });
  });

  it('is the middle of several probes, however often each speaks', async () => {
    const { store, probesNow } = await openHouse([{ fromMs: TENT_MS - DAY_MS }, { fromMs: TENT_MS - DAY_MS }]);
    await measure(store, 1, TENT_MS - DAY_MS, TENT_MS, 20);
    await measure(store, 2, TENT_MS - HOUR_MS, TENT_MS, 24);
    expect((await meanAt(store, await probesNow(), TENT_MS)).temperature).toBe(22);
  });

  it('leaves out what a probe measured before it stood in the house', async () => {
    const { store, probesNow } = await openHouse([{ fromMs: TENT_MS - HOUR_MS }]);
    await measure(store, 1, TENT_MS - DAY_MS, TENT_MS - HOUR_MS, 30, 98);
    await measure(store, 1, TENT_MS - HOUR_MS, TENT_MS, 18, 55);
    expect(await meanAt(store, await probesNow(), TENT_MS)).toEqual({ temperature: 18, humidity: 55 });
  });

  it('leaves out a probe that is out of service', async () => {
    const { store, probesNow } = await openHouse([{ fromMs: 0 }, { fromMs: 0, outOfService: true }]);
    await measure(store, 1, TENT_MS - HOUR_MS, TENT_MS, 20);
    await measure(store, 2, TENT_MS - HOUR_MS, TENT_MS, 60);
    expect((await meanAt(store, await probesNow(), TENT_MS)).temperature).toBe(20);
  });

  it('is asked for again after five minutes, not sooner, and says whether it has changed', async () => {
    const { store, probesNow } = await openHouse([{ fromMs: TENT_MS - DAY_MS }]);
    const probes = await probesNow();
    const watch = createHouseWatch(store);
    await measure(store, 1, TENT_MS - HOUR_MS, TENT_MS, 20);
    expect(await watch.refresh(probes, TENT_MS)).toBe(true);
    await measure(store, 1, TENT_MS, TENT_MS + 4 * MINUTE_MS, 30);
    expect(await watch.refresh(probes, TENT_MS + 5 * MINUTE_MS - 1)).toBe(false);
    expect(watch.mean().temperature).toBe(20);
    expect(await watch.refresh(probes, TENT_MS + 5 * MINUTE_MS)).toBe(true);
    expect(watch.mean().temperature).toBeCloseTo((60 * 20 + 4 * 30) / 64, 4);
    expect(await watch.refresh(probes, TENT_MS + 10 * MINUTE_MS)).toBe(false);
  });
});

describe('the air of the house now', () => {
  it('is what its probes said last, while that is fresh', async () => {
    const { store, probesNow } = await openHouse([{ fromMs: TENT_MS - DAY_MS }, { fromMs: TENT_MS, place: 'canopy' }]);
    await measure(store, 1, TENT_MS, TENT_MS + 1, 19, 58);
    await measure(store, 2, TENT_MS, TENT_MS + 1, 25, 97);
    const probes = await probesNow();
    expect(houseClimate(probes, TENT_MS + 15 * MINUTE_MS, 0)).toMatchObject({ temperature: 19, humidity: 58 });
    expect(houseClimate(probes, TENT_MS + 15 * MINUTE_MS + 1, 0)).toMatchObject({ temperature: null, humidity: null });
  });
});

describe('limits that end at house level', () => {
  it('follow the mean of the house, and the numbers of the profile until there is one', async () => {
    const tent = await openTent();
    // On the ninth day: hardening, when humidity may be 20 %RH below and 25 %RH above the house.
    const closedAt = new Date(TENT_MS - 7.5 * DAY_MS).toISOString();
    const batch = { chamberId: tent.chamberId, profileId: TENT_PROFILE, code: 'T-1', closedAt };
    await tent.api.post('/batches', batch);
    expect((await tent.chamber()).limits?.humidity).toMatchObject({ low: 45, high: 90 });
    await tent.api.post('/probes', { nodeId: 'n1', address: 'house', place: 'house' });
    for (let n = 0; n < 6; n += 1) {
      await tent.measure(20, 60, 'house');
      await tent.measure(22, 70);
      tent.clock.advance(MINUTE_MS + SECOND_MS);
    }
    await tent.app.tick();
    expect(await tent.chamber()).toMatchObject({
      house: { temperature: 20, humidity: 60 },
      limits: { humidity: { low: 40, high: 85 } },
    });
  });
});
