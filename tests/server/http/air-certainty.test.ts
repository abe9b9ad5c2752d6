// What the chamber view says about its own certainty: ± of the climate, and the film.
import { describe, expect, it } from 'vitest';
import type { ProbeView } from '../../../shared/api/probes.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openBatch, openTent, type Tent } from '../../support/open-tent.ts';

/** Places the probe of that address, which has been heard. */
async function place(tent: Tent, address: string, where: 'film' | 'house'): Promise<void> {
  const { items } = (await tent.api.get<{ items: ProbeView[] }>('/probes')).body;
  const id = items.find((probe) => probe.address === address)?.id;
  await tent.api.patch(`/probes/${id}`, { place: where, chamberId: where === 'house' ? null : tent.chamberId });
}

const filmOf = async (tent: Tent) => (await tent.chamber()).climate.film;

describe('the uncertainty of the climate', () => {
  it('is that of a usual probe, and what it does to VPD and dew point', async () => {
    const tent = await openTent();
    await tent.measure(22, 95);
    const { climate } = await tent.chamber();
    expect(climate).toMatchObject({ temperatureUncertainty: 0.2, humidityUncertainty: 2 });
    // By hand at 22 °C, 95 %RH: es 2.645 kPa, slope 0.161 kPa/K. VPD: root of (2.645 · 0.02)² + (0.05 · 0.161 · 0.2)².
    expect(climate.vpdKpaUncertainty).toBeCloseTo(0.0529, 3);
    // Dew point 21.2 °C, slope there 0.154: root of 0.0529² + (0.95 · 0.161 · 0.2)², over 0.154.
    expect(climate.dewPointUncertainty).toBeCloseTo(0.397, 2);
  });

  it('is not known where the climate is not', async () => {
    const tent = await openTent();
    const nothing = {
      ...{ temperatureUncertainty: null, humidityUncertainty: null },
      ...{ vpdKpaUncertainty: null, dewPointUncertainty: null },
    };
    expect((await tent.chamber()).climate).toMatchObject(nothing);
    await tent.measure(22, 95);
    tent.clock.advance(11 * MINUTE_MS);
    expect((await tent.chamber()).climate).toMatchObject(nothing);
  });
});

describe('the film', () => {
  it('cannot be told with neither a film probe nor house air', async () => {
    const tent = await openTent();
    await tent.measure(24, 98);
    expect(await filmOf(tent)).toEqual({ expected: 'unknown', margin: null, basis: 'nothing to tell by' });
  });

  it.each([
    [16, 'wet', 'the film is at most half-way, 20 °C'],
    [30, 'dry', 'the film is at least half-way, 27 °C'],
    [24, 'unknown', 'a few tenths decide'],
  ])('in a house of %f °C is told by its air to be %s, and said to be an estimate: %s', async (warmth, expected) => {
    const tent = await openTent();
    // Dew point 23.67 °C.
    await tent.measure(24, 98);
    await tent.measure(warmth, 60, 'house');
    await place(tent, 'house', 'house');
    expect(await filmOf(tent)).toMatchObject({ expected, basis: 'house air, an estimate' });
  });

  it.each([
    [20, 'wet', 3.67],
    [27, 'dry', -3.33],
    [23.6, 'unknown', 0.07],
  ])(
    'of %f °C by its own probe is expected %s in air with a dew point of 23.67 °C',
    async (warmth, expected, margin) => {
      const tent = await openTent();
      await tent.measure(24, 98);
      await tent.measure(warmth, 99, 'film');
      await tent.measure(16, 60, 'house');
      await place(tent, 'film', 'film');
      await place(tent, 'house', 'house');
      await tent.measure(warmth, 99, 'film');
      const film = await filmOf(tent);
      expect(film).toMatchObject({ expected, basis: 'film probe' });
      expect(film.margin).toBeCloseTo(margin, 1);
    },
  );

  it('falls back on house air when its probe is silent', async () => {
    const tent = await openTent();
    await tent.measure(20, 99, 'film');
    await tent.measure(16, 60, 'house');
    await place(tent, 'film', 'film');
    await place(tent, 'house', 'house');
    tent.clock.advance(11 * MINUTE_MS);
    await tent.measure(24, 98);
    await tent.measure(16, 60, 'house');
    expect((await filmOf(tent)).basis).toBe('house air, an estimate');
  });
});

describe('dryness ahead', () => {
  it('is told with its interval while the air of a closed tent falls toward its low limit, and not once it is below', async () => {
    const tent = await openTent();
    await openBatch(tent);
    const low = (await tent.chamber()).limits?.humidity.low ?? expect.fail('the batch has no limits');
    const fall = async (from: number, to: number, perMinute: number) => {
      for (let humidity = from; humidity >= to; humidity -= perMinute) {
        tent.clock.advance(MINUTE_MS);
        await tent.measure(22, humidity);
      }
    };
    await tent.measure(22, low + 8);
    expect((await tent.chamber()).dryAhead).toBeNull();
    await fall(low + 8, low + 2, 0.3);
    const { dryAhead } = await tent.chamber();
    expect(dryAhead?.limit).toBe(low);
    const [earliest, about, latest] = [dryAhead?.earliest, dryAhead?.at, dryAhead?.latest].map((text) =>
      Date.parse(text ?? ''),
    );
    // Two percent at 0.3 a minute are some seven minutes.
    expect((about ?? 0) - tent.clock.nowMs()).toBeGreaterThan(3 * MINUTE_MS);
    expect((about ?? 0) - tent.clock.nowMs()).toBeLessThan(12 * MINUTE_MS);
    expect(earliest).toBeLessThan(about ?? 0);
    expect(latest).toBeGreaterThan(about ?? 0);
    await fall(low + 1.7, low - 1, 0.3);
    expect((await tent.chamber()).dryAhead).toBeNull();
  });
});
