// Steps the simulated tent through time: explicit Euler with a sub-step short enough to be stable for every gap.
// Water and heat are kept to the last digit: what leaves one store enters another or is named in the ledger.
import { saturatedRatio } from './moist-air.ts';
import type { HeatFlows, TentInputs, TentState, WaterFlows } from './tent-flows.ts';
import { computeHeatFlows, computeWaterFlows, LATENT_J } from './tent-flows.ts';
import { plausibleTent, type TentParameters } from './tent-parameters.ts';

/** Longest sub-step, s. The quickest store (film and vapour, gap open) settles in about 15 s, so Euler is stable below 30 s. */
export const SUB_STEP_SECONDS = 10;

/** What crossed the tent's border during a step, kg/m² of bench. */
interface WaterLedger {
  readonly exchangeInKg: number;
  readonly plantsKg: number;
  readonly fogKg: number;
  readonly drainedKg: number;
}

interface TentStep {
  readonly state: TentState;
  readonly water: WaterLedger;
}

/** The tent `seconds` later (0 or more), with inputs held constant. Never supersaturated: what the air cannot hold rains out. */
export function advanceTent(
  state: TentState,
  inputs: TentInputs,
  seconds: number,
  tent: TentParameters = plausibleTent,
): TentStep {
  const steps = Math.ceil(seconds / SUB_STEP_SECONDS);
  let now: TentStep = { state, water: { exchangeInKg: 0, plantsKg: 0, fogKg: 0, drainedKg: 0 } };
  for (let step = 0; step < steps; step += 1) now = subStep(now, inputs, seconds / steps, tent);
  return now;
}

function subStep(before: TentStep, inputs: TentInputs, seconds: number, tent: TentParameters): TentStep {
  const water = computeWaterFlows(before.state, inputs, tent);
  const heat = computeHeatFlows(before.state, inputs, water, tent);
  const mixed = applyFlows(before.state, water, heat, seconds, tent);
  const { state, drainedKg } = runOff(rainOut(mixed, tent), tent);
  return { state, water: addToLedger(before.water, water, drainedKg, seconds) };
}

function applyFlows(
  state: TentState,
  water: WaterFlows,
  heat: HeatFlows,
  seconds: number,
  tent: TentParameters,
): TentState {
  const vapourIn = water.exchangeIn + water.plants + water.floorToAir + water.fogToAir - water.airToFilm;
  return {
    airTemperature: state.airTemperature + (heat.air * seconds) / tent.airHeatJ,
    humidityRatio: state.humidityRatio + (vapourIn * seconds) / tent.airMassKg,
    filmTemperature: state.filmTemperature + (heat.film * seconds) / tent.filmHeatJ,
    benchTemperature: state.benchTemperature + (heat.bench * seconds) / tent.benchHeatJ,
    floorWaterKg: state.floorWaterKg + (water.fogToFloor - water.floorToAir) * seconds,
    filmWaterKg: state.filmWaterKg + water.airToFilm * seconds,
  };
}

/**
 * Vapour beyond saturation falls to the floor and warms the air. Newton's step starts below the root of a falling concave
 * function, so it lands on or past it: the air is left at or just under saturation, never over.
 */
function rainOut(state: TentState, tent: TentParameters): TentState {
  const excess = state.humidityRatio - saturatedRatio(state.airTemperature);
  if (excess <= 0) return state;
  const warmingPerKg = LATENT_J / tent.airHeatJ;
  const slope = 1 / tent.airMassKg + warmingPerKg * ratioSlope(state.airTemperature);
  const rainKg = excess / slope;
  return {
    ...state,
    airTemperature: state.airTemperature + warmingPerKg * rainKg,
    humidityRatio: state.humidityRatio - rainKg / tent.airMassKg,
    floorWaterKg: state.floorWaterKg + rainKg,
  };
}

/** d(saturated ratio)/dT by a backward difference: a little too small, so the step goes a little too far, which is the safe side. */
function ratioSlope(temperature: number): number {
  return (saturatedRatio(temperature) - saturatedRatio(temperature - 0.001)) / 0.001;
}

function runOff(state: TentState, tent: TentParameters): { state: TentState; drainedKg: number } {
  const runsDownKg = Math.max(0, state.filmWaterKg - tent.filmHoldsKg);
  const floorKg = state.floorWaterKg + runsDownKg;
  const drainedKg = Math.max(0, floorKg - tent.floorHoldsKg);
  return {
    state: { ...state, filmWaterKg: state.filmWaterKg - runsDownKg, floorWaterKg: floorKg - drainedKg },
    drainedKg,
  };
}

function addToLedger(ledger: WaterLedger, water: WaterFlows, drainedKg: number, seconds: number): WaterLedger {
  return {
    exchangeInKg: ledger.exchangeInKg + water.exchangeIn * seconds,
    plantsKg: ledger.plantsKg + water.plants * seconds,
    fogKg: ledger.fogKg + (water.fogToAir + water.fogToFloor) * seconds,
    drainedKg: ledger.drainedKg + drainedKg,
  };
}
