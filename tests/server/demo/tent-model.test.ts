// The simulated tent against closed forms of simple cases, and how it is stepped.
import { describe, expect, it } from 'vitest';
import { humidityOf, saturatedRatio } from '../../../server/demo/moist-air.ts';
import { airChangesPerHour } from '../../../server/demo/tent-flows.ts';
import { advanceTent } from '../../../server/demo/tent-model.ts';
import { type TentParameters, plausibleTent as tent } from '../../../server/demo/tent-parameters.ts';
import { closedTent, night } from './tent-cases.ts';

/** The same tent without plants, wet floor or film that takes up vapour: only the gap moves it. */
const emptyTent: TentParameters = { ...tent, plantVapourKg: 0, floorVapourKg: 0, filmVapourKg: 0 };

describe('the closed form', () => {
  // w(t) = wHouse + (w0 − wHouse) e^(−n t), n = air changes an hour: one well-mixed room (from memory, any ventilation textbook).
  it.each([
    { gapPercent: 0, hours: 1 },
    { gapPercent: 10, hours: 0.5 },
    { gapPercent: 25, hours: 0.2 },
    { gapPercent: 50, hours: 0.05 },
  ])(
    'with no sun and no source the air relaxes to the house with the rate of a gap of $gapPercent %',
    ({ gapPercent, hours }) => {
      const inputs = { ...night, houseTemperature: 22, gapPercent };
      const start = { ...closedTent, filmTemperature: 22, floorWaterKg: 0, filmWaterKg: 0 };
      const { state } = advanceTent(start, inputs, hours * 3600, emptyTent);
      const left = Math.exp(-airChangesPerHour(gapPercent, emptyTent) * hours);
      const expected = inputs.houseHumidityRatio + (start.humidityRatio - inputs.houseHumidityRatio) * left;
      const travelled = Math.abs(start.humidityRatio - expected);
      expect(Math.abs(state.humidityRatio - expected)).toBeLessThan(0.02 * travelled);
    },
  );

  it('in steady state plants and gap balance: n m (w − wHouse) = g (ws − w)', () => {
    const plantsOnly = { ...emptyTent, plantVapourKg: tent.plantVapourKg, sunToLeaves: 0 };
    const inputs = { ...night, gapPercent: 15 };
    const { state } = advanceTent(closedTent, inputs, 48 * 3600, plantsOnly);
    const airKg = (plantsOnly.airMassKg * airChangesPerHour(15, plantsOnly)) / 3600;
    const saturated = saturatedRatio(state.airTemperature);
    const expected =
      (airKg * inputs.houseHumidityRatio + plantsOnly.plantVapourKg * saturated) / (airKg + plantsOnly.plantVapourKg);
    expect(state.humidityRatio).toBeCloseTo(expected, 7);
  });

  it('in steady state without water the dry tent takes the temperature that heat and loss balance at', () => {
    const dryTent = { ...emptyTent, leakPerHour: 0 };
    const inputs = { ...night, houseHumidityRatio: 0.002, sunWm2: 200 };
    const start = { ...closedTent, humidityRatio: 0.002, floorWaterKg: 0, filmWaterKg: 0 };
    const { state } = advanceTent(start, inputs, 96 * 3600, dryTent);
    // Three nodes, solved by hand: film (f), air (a), bench (b) above the house.
    const { airToFilmW: fa, filmToHouseW: fh, airToBenchW: ab, benchToHouseW: bh } = dryTent;
    const sun = [dryTent.sunToLeaves * 200, dryTent.sunToFilm * 200, dryTent.sunToBench * 200] as const;
    const viaFilm = fa / (fa + fh);
    const viaBench = ab / (ab + bh);
    const rise = (sun[0] + viaFilm * sun[1] + viaBench * sun[2]) / (fa * (1 - viaFilm) + ab * (1 - viaBench));
    expect(state.airTemperature - 18).toBeCloseTo(rise, 2);
  });
});

describe('the gap', () => {
  it('dries the tent the more, the further it is open', () => {
    const humidities = [0, 10, 20, 40, 70, 100].map((gapPercent) => {
      const { state } = advanceTent(closedTent, { ...night, benchHeatWm2: 60, gapPercent }, 12 * 3600);
      return humidityOf(state.airTemperature, state.humidityRatio);
    });
    expect(humidities).toEqual([...humidities].sort((a, b) => b - a));
    expect(humidities[0]).toBeGreaterThan(93);
    expect(humidities[5]).toBeLessThan(75);
  });

  it.each([
    { gapPercent: 0, changes: 0.8, why: 'leaks only' },
    { gapPercent: 25, changes: 0.8 + 59.2 / 8, why: 'a quarter open gives an eighth: 0.25^1.5' },
    { gapPercent: 100, changes: 60, why: 'fully open' },
  ])('exchanges $changes times an hour at $gapPercent %: $why', ({ gapPercent, changes }) => {
    expect(airChangesPerHour(gapPercent, tent)).toBeCloseTo(changes, 9);
  });
});

describe('stepping', () => {
  it('stays finite and settles with the gap fully open in full sun', () => {
    const inputs = { ...night, sunWm2: 450, gapPercent: 100 };
    const day = advanceTent(closedTent, inputs, 24 * 3600).state;
    const dayAndMinute = advanceTent(day, inputs, 60).state;
    expect(dayAndMinute.airTemperature).toBeCloseTo(day.airTemperature, 3);
    expect(day.airTemperature).toBeGreaterThan(18);
    expect(day.airTemperature).toBeLessThan(45);
  });

  it('comes to nearly the same with sub-steps half as long', () => {
    const inputs = { ...night, sunWm2: 100, benchHeatWm2: 40 };
    const whole = advanceTent(closedTent, inputs, 3600).state;
    let halves = closedTent;
    for (let step = 0; step < 720; step += 1) halves = advanceTent(halves, inputs, 5).state;
    expect(Math.abs(halves.airTemperature - whole.airTemperature)).toBeLessThan(0.02);
    expect(Math.abs(halves.humidityRatio - whole.humidityRatio)).toBeLessThan(0.00005);
  });

  it('leaves the tent as it is when no time passes', () => {
    expect(advanceTent(closedTent, night, 0).state).toEqual(closedTent);
  });
});
