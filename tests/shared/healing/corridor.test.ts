// The corridor at an instant: shapes over stages, house air, grace over borders, order of the four limits.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BatchTimes, planStages } from '../../../shared/healing/batch-clock.ts';
import { corridorAt, type HouseAir, makeCorridor } from '../../../shared/healing/corridor.ts';
import type { Limit, LimitSet, ProfileDocument } from '../../../shared/healing/profile.ts';
import { HOUR_MS } from '../../../shared/units.ts';
import { closedMs, constant, plainProfile, plainStage, timesOf } from './sample-plan.ts';

const at = (hours: number) => closedMs + hours * HOUR_MS;
const noHouse: HouseAir = { temperature: null, humidity: null };
const basis = 'ours';

function profileWith(venting: Partial<LimitSet>, closed: Partial<LimitSet> = {}): ProfileDocument {
  const set = { low: constant(60), high: constant(100) };
  return plainProfile({
    stages: [
      plainStage('loading', 0, { humidity: { low: constant(75), high: constant(95) } }),
      plainStage('closed', 0, { humidity: { low: constant(90), high: constant(100), ...closed } }),
      plainStage('venting', 96, { humidity: { ...set, ...venting } }),
      plainStage('hardening', 144, { humidity: { low: constant(40), high: constant(100) } }),
    ],
  });
}

function humidityAt(document: ProfileDocument, hours: number, times: Partial<BatchTimes> = {}, house = noHouse) {
  return makeCorridor(document, planStages(document, timesOf(times), at(300)), house)(at(hours))?.humidity ?? null;
}

describe('the corridor', () => {
  it('is null outside all stages', () => {
    const document = profileWith({});
    expect([-1 / HOUR_MS, 0, 191.999, 192].map((hours) => humidityAt(document, hours) !== null)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('is null in a stage for which the profile has no limits', () => {
    const document = plainProfile({ stages: [plainStage('closed', 0)] });
    expect(humidityAt(document, -1, { openedMs: at(-2) })).toBeNull();
    expect(humidityAt(document, 1, { openedMs: at(-2) })).not.toBeNull();
  });

  it('stands while the chamber is being loaded, for as long as that takes', () => {
    const document = profileWith({});
    const loading = { openedMs: at(-6), closedMs: null };
    expect(humidityAt(document, 1000, loading)).toEqual({ lowLow: null, low: 75, high: 95, highHigh: null });
  });

  it('comes down in stairs: the first step with venting, the last at house level', () => {
    const low: Limit = { shape: 'stairs', from: 90, to: { houseOffset: -10, fallback: 50 }, steps: 4, basis };
    const document = profileWith({ low });
    const hours = [95.9, 96, 107.9, 108, 120, 132, 143.9];
    expect(hours.map((hour) => humidityAt(document, hour)?.low)).toEqual([90, 80, 80, 70, 60, 50, 50]);
  });

  it('ends at the house mean plus the offset where a house probe is heard', () => {
    const low: Limit = { shape: 'ramp', from: 90, to: { houseOffset: -10, fallback: 50 }, basis };
    const document = profileWith({ low });
    expect(humidityAt(document, 120, {}, { temperature: null, humidity: 80 })?.low).toBe(80);
    expect(humidityAt(document, 120, {}, noHouse)?.low).toBe(70);
  });

  const clamps = [
    { why: 'never below 0 %RH', house: 5, offset: -20, low: 0 },
    { why: 'never above 100 %RH', house: 95, offset: 20, low: 100 },
  ];
  it.each(clamps)('keeps a humidity from the house $why', ({ house, offset, low }) => {
    const limit: Limit = { shape: 'levels', values: [{ houseOffset: offset, fallback: 50 }], basis };
    const document = profileWith({ low: limit, lowLow: limit, high: constant(100) }, { low: constant(100) });
    expect(humidityAt(document, 140, {}, { temperature: null, humidity: house })?.low).toBe(low);
  });

  it('takes temperature from the house mean too, and holds it to no scale', () => {
    const limit: Limit = { shape: 'levels', values: [{ houseOffset: -5, fallback: 18 }], basis };
    const temperature = { low: limit, high: constant(40) };
    const document = plainProfile({ stages: [plainStage('closed', 0, { temperature })] });
    const spans = planStages(document, timesOf(), at(0));
    expect(makeCorridor(document, spans, { temperature: 3, humidity: null })(at(5))?.temperature.low).toBe(-2);
    expect(makeCorridor(document, spans, noHouse)(at(5))?.temperature.low).toBe(18);
  });

  it('never shuts: where house air makes low and high cross they change places', () => {
    const high: Limit = { shape: 'levels', values: [{ houseOffset: 10, fallback: 80 }], basis };
    const document = profileWith({ low: constant(60), high });
    expect(humidityAt(document, 140, {}, { temperature: null, humidity: 30 })).toMatchObject({ low: 40, high: 60 });
  });

  it('pauses with a hold, and lets the rest of the stairs follow later', () => {
    const low: Limit = { shape: 'stairs', from: 90, to: 50, steps: 4, basis };
    const held = { holds: [{ fromMs: at(106), toMs: at(116) }] };
    const hours = [105, 107, 115, 117, 118.1];
    expect(hours.map((hour) => humidityAt(profileWith({ low }), hour, held)?.low)).toEqual([80, 80, 80, 80, 70]);
  });

  it('shows the same past before and after a hold', () => {
    const low: Limit = { shape: 'ramp', from: 90, to: 50, basis };
    const document = profileWith({ low });
    const held = { holds: [{ fromMs: at(120), toMs: at(130) }] };
    for (const hour of [97, 110, 119.9]) {
      expect(humidityAt(document, hour, held)?.low).toBeCloseTo(humidityAt(document, hour)?.low ?? 0, 9);
    }
  });

  it('at one instant is the same as the whole one', () => {
    const document = profileWith({ low: { shape: 'ramp', from: 90, to: 50, basis } });
    const whole = makeCorridor(document, planStages(document, timesOf(), at(100)), noHouse);
    expect(corridorAt(document, timesOf(), at(100), noHouse)).toEqual(whole(at(100)));
  });
});

describe('grace over the borders of the stages', () => {
  it('raises the low limit from loading to closed over hours', () => {
    const document = profileWith({});
    const hours = [-0.1, 0, 1, 2, 3, 4];
    expect(hours.map((hour) => humidityAt(document, hour, { openedMs: at(-6) })?.low)).toEqual([
      75, 75, 80, 85, 90, 90,
    ]);
  });

  it('does so too when nobody knows when loading began', () => {
    const low = humidityAt(profileWith({}), 1)?.low;
    expect(low).toBeCloseTo(80, 4);
  });

  it('begins at the limits of closed in a profile without loading', () => {
    const document = plainProfile({
      stages: [plainStage('closed', 0, { humidity: { low: constant(90), high: constant(100) } })],
    });
    expect(humidityAt(document, 0)?.low).toBe(90);
  });

  it('lets the low limit fall at once when venting begins', () => {
    expect([95.999, 96].map((hour) => humidityAt(profileWith({}), hour)?.low)).toEqual([90, 60]);
  });

  it('keeps an outer limit outside the inner one that grace still holds open', () => {
    const document = profileWith({ low: constant(40), high: constant(70), highHigh: constant(75) });
    // At 97 h grace holds high at 95; highHigh is new in this stage and would be 75.
    expect(humidityAt(document, 97)).toMatchObject({ high: 95, highHigh: 95 });
    expect(humidityAt(document, 110)).toMatchObject({ high: 70, highHigh: 75 });
  });

  it('keeps low-low below the low that grace still holds down', () => {
    const document = profileWith({}, { lowLow: constant(85) });
    expect(humidityAt(document, 1, { openedMs: at(-6) })).toMatchObject({ lowLow: 80, low: 80 });
  });
});

const anyEnd = fc.oneof(
  fc.integer({ min: 0, max: 100 }),
  fc.record({ houseOffset: fc.integer({ min: -30, max: 30 }), fallback: fc.integer({ min: 0, max: 100 }) }),
);
const value = fc.integer({ min: 0, max: 100 });
const anyLimit: fc.Arbitrary<Limit> = fc.oneof(
  value.map(constant),
  fc.record({ shape: fc.constant('ramp' as const), from: value, to: anyEnd, basis: fc.constant(basis) }),
  fc.record({
    shape: fc.constant('stairs' as const),
    from: value,
    to: anyEnd,
    steps: fc.integer({ min: 1, max: 8 }),
    basis: fc.constant(basis),
  }),
  fc.record({
    shape: fc.constant('levels' as const),
    values: fc.array(anyEnd, { minLength: 1, maxLength: 5 }),
    basis: fc.constant(basis),
  }),
);
const anyLow = fc.record({ low: anyLimit, lowLow: anyLimit, high: fc.constant(constant(100)) });
const anyTimes = fc.record({
  openedMs: fc.option(fc.constant(at(-6))),
  holds: fc.array(
    fc
      .record({ from: fc.integer({ min: 0, max: 200 }), length: fc.integer({ min: 0, max: 30 }) })
      .map(({ from, length }) => ({ fromMs: at(from), toMs: at(from + length) })),
    { maxLength: 3 },
  ),
  moves: fc.array(
    fc.record({
      stage: fc.constantFrom('venting' as const, 'hardening' as const),
      atMs: fc.integer({ min: 0, max: 250 }).map(at),
    }),
    { maxLength: 2 },
  ),
});

describe('the corridor, for any limits, holds and moves', () => {
  const sets = fc.array(anyLow, { minLength: 4, maxLength: 4 });
  const house = fc.record({ temperature: fc.constant(null), humidity: fc.option(fc.integer({ min: 0, max: 100 })) });

  const build = (limits: readonly LimitSet[], times: Partial<BatchTimes>, air: HouseAir) => {
    const plain = plainProfile();
    const stages = plain.stages.map((stage, i) => ({ ...stage, humidity: limits[i] ?? stage.humidity }));
    const document = { ...plain, stages };
    return makeCorridor(document, planStages(document, timesOf(times), at(400)), air);
  };

  it('tightens no faster than the grace over borders, steps and holds', () => {
    fc.assert(
      fc.property(sets, anyTimes, house, (limits, times, air) => {
        const corridor = build(limits, times, air);
        let last: number | null = null;
        for (let hour = -6; hour < 300; hour += 0.5) {
          const low = corridor(at(hour))?.humidity.low ?? null;
          // 5 %RH an hour is the grace of the plain profile.
          if (low !== null && last !== null) expect(low - last).toBeLessThanOrEqual(2.5 + 1e-6);
          last = low;
        }
      }),
    );
  });

  it('keeps its four limits in order', () => {
    const anySets = fc.array(fc.record({ lowLow: anyLimit, low: anyLimit, high: anyLimit, highHigh: anyLimit }), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(anySets, anyTimes, house, fc.integer({ min: -6, max: 300 }), (limits, times, air, hour) => {
        const band = build(limits, times, air)(at(hour))?.humidity;
        if (band === undefined) return;
        expect(band.low).toBeLessThanOrEqual(band.high);
        expect(band.lowLow ?? Number.NaN).toBeLessThanOrEqual(band.low);
        expect(band.highHigh ?? Number.NaN).toBeGreaterThanOrEqual(band.high);
      }),
    );
  });
});
