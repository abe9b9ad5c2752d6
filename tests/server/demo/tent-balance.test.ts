// The balances of the simulated tent: water and heat are neither made nor lost, and the air is never more than saturated.
import { describe, expect, it } from 'vitest';
import { humidityOf, ratioOf, saturatedRatio } from '../../../server/demo/moist-air.ts';
import {
  AIR_J,
  airChangesPerHour,
  LATENT_J,
  type TentInputs,
  type TentState,
} from '../../../server/demo/tent-flows.ts';
import { advanceTent, SUB_STEP_SECONDS } from '../../../server/demo/tent-model.ts';
import { plausibleTent as tent } from '../../../server/demo/tent-parameters.ts';
import { closedTent, inputTable, night } from './tent-cases.ts';

const vapourKg = (state: TentState): number => state.humidityRatio * tent.airMassKg;
const waterKg = (state: TentState): number => vapourKg(state) + state.floorWaterKg + state.filmWaterKg;

describe('the water balance', () => {
  it.each(inputTable)('closes over six hours: $why', ({ inputs }) => {
    const { state, water } = advanceTent(closedTent, inputs, 6 * 3600);
    const gainKg = water.exchangeInKg + water.plantsKg + water.fogKg - water.drainedKg;
    expect(waterKg(state) - waterKg(closedTent)).toBeCloseTo(gainKg, 9);
  });

  it.each(inputTable)('never leaves less than no water on film and floor: $why', ({ inputs }) => {
    const { state } = advanceTent({ ...closedTent, floorWaterKg: 0, filmWaterKg: 0 }, inputs, 6 * 3600);
    expect(state.floorWaterKg).toBeGreaterThanOrEqual(0);
    expect(state.filmWaterKg).toBeGreaterThanOrEqual(0);
  });

  it('lets what film and floor cannot hold run off', () => {
    const { state, water } = advanceTent(closedTent, { ...night, foggerOn: true }, 24 * 3600);
    expect(state.filmWaterKg).toBeLessThanOrEqual(tent.filmHoldsKg);
    expect(state.floorWaterKg).toBeLessThanOrEqual(tent.floorHoldsKg);
    expect(water.drainedKg).toBeGreaterThan(0);
  });
});

/** J/m²: what the stores hold, vapour by its latent heat. */
function heatJ(state: TentState): number {
  return (
    tent.airHeatJ * state.airTemperature +
    tent.filmHeatJ * state.filmTemperature +
    tent.benchHeatJ * state.benchTemperature +
    LATENT_J * vapourKg(state)
  );
}

/** W/m² through the tent's border at this instant, written down independently of the model's own flows. */
function borderW(state: TentState, inputs: TentInputs): number {
  const airKg = (tent.airMassKg * airChangesPerHour(inputs.gapPercent, tent)) / 3600;
  return (
    (tent.sunToFilm + tent.sunToLeaves + tent.sunToBench) * inputs.sunWm2 +
    inputs.benchHeatWm2 +
    tent.filmToHouseW * (inputs.houseTemperature - state.filmTemperature) +
    tent.benchToHouseW * (inputs.houseTemperature - state.benchTemperature) +
    airKg * AIR_J * (inputs.houseTemperature - state.airTemperature) +
    airKg * LATENT_J * (inputs.houseHumidityRatio - state.humidityRatio)
  );
}

describe('the energy balance', () => {
  it.each(inputTable)('closes over one sub-step: $why', ({ inputs }) => {
    const { state } = advanceTent(closedTent, inputs, SUB_STEP_SECONDS);
    expect(heatJ(state) - heatJ(closedTent)).toBeCloseTo(borderW(closedTent, inputs) * SUB_STEP_SECONDS, 4);
  });

  it('warms the tent in the sun and cools it at night', () => {
    const start = { ...closedTent, airTemperature: 20, filmTemperature: 20, benchTemperature: 20 };
    const inputs = { ...night, houseTemperature: 20 };
    const warmthUnder = (sunWm2: number, houseTemperature: number): number =>
      advanceTent(start, { ...inputs, sunWm2, houseTemperature }, 1800).state.airTemperature;
    expect(warmthUnder(400, 20)).toBeGreaterThan(warmthUnder(80, 20));
    expect(warmthUnder(80, 20)).toBeGreaterThan(warmthUnder(0, 20));
    expect(warmthUnder(0, 16)).toBeLessThan(20);
  });

  it('cools by fog as long as the air has room for vapour', () => {
    const dry = { ...closedTent, humidityRatio: ratioOf(22, 70) };
    const withFog = advanceTent(dry, { ...night, foggerOn: true }, 60).state.airTemperature;
    expect(withFog).toBeLessThan(advanceTent(dry, night, 60).state.airTemperature);
  });
});

describe('saturation', () => {
  it('is never passed, however the tent is chilled, fogged or steamed', () => {
    for (const { inputs } of inputTable) {
      for (const houseTemperature of [0, 18, 35]) {
        let state: TentState = { ...closedTent, humidityRatio: saturatedRatio(22) };
        for (let minute = 0; minute < 120; minute += 1) {
          state = advanceTent(
            state,
            { ...inputs, houseTemperature, houseHumidityRatio: ratioOf(houseTemperature, 99) },
            60,
          ).state;
          expect(humidityOf(state.airTemperature, state.humidityRatio)).toBeLessThanOrEqual(100 + 1e-9);
        }
      }
    }
  });

  it('rains out vapour beyond it, and the air is warmer for it', () => {
    const fogbound = { ...closedTent, humidityRatio: ratioOf(22, 100) * 1.1 };
    const { state } = advanceTent(fogbound, { ...night, houseTemperature: 22 }, 1);
    expect(humidityOf(state.airTemperature, state.humidityRatio)).toBeLessThanOrEqual(100);
    expect(state.airTemperature).toBeGreaterThan(22);
    expect(state.floorWaterKg).toBeGreaterThan(closedTent.floorWaterKg);
  });
});
