// The flows of heat and water in the simulated tent at one instant, per square metre of bench. Only computes; changes no state.
import { saturatedRatio } from './moist-air.ts';
import type { TentParameters } from './tent-parameters.ts';

/** Heat of evaporation of water near 22 °C, J/kg. */
export const LATENT_J = 2_450_000;
/** Heat capacity of air, J/(K·kg). */
export const AIR_J = 1_006;
/** The air takes all of the fog while it has this much room for vapour, kg/kg; less room, less taken. */
const FOG_ROOM = 0.0004;

/** Temperatures in °C, humidity ratio in kg/kg of dry air, water in kg/m² of bench. */
export interface TentState {
  readonly airTemperature: number;
  readonly humidityRatio: number;
  readonly filmTemperature: number;
  readonly benchTemperature: number;
  readonly floorWaterKg: number;
  readonly filmWaterKg: number;
}

export interface TentInputs {
  readonly houseTemperature: number;
  /** kg/kg of dry air. */
  readonly houseHumidityRatio: number;
  /** On the film, after greenhouse cover and shade, W/m². */
  readonly sunWm2: number;
  readonly foggerOn: boolean;
  /** 0–100 %. */
  readonly gapPercent: number;
  /** Bottom heat, W/m². */
  readonly benchHeatWm2: number;
}

/** Water in kg/(s·m²), positive in the direction named. */
export interface WaterFlows {
  readonly exchangeIn: number;
  readonly plants: number;
  readonly floorToAir: number;
  readonly airToFilm: number;
  readonly fogToAir: number;
  readonly fogToFloor: number;
}

/** Net heat gain of each store, W/m². */
export interface HeatFlows {
  readonly air: number;
  readonly film: number;
  readonly bench: number;
}

/** Air changes an hour. Flow through a vertical opening driven by warmth grows with its height to the power 1.5. */
export function airChangesPerHour(gapPercent: number, tent: TentParameters): number {
  return tent.leakPerHour + (tent.openPerHour - tent.leakPerHour) * (gapPercent / 100) ** 1.5;
}

/** Vapour and liquid water on the move. A surface gives off vapour only as far as it is wet, but takes up dew when dry. */
export function computeWaterFlows(state: TentState, inputs: TentInputs, tent: TentParameters): WaterFlows {
  const ratio = state.humidityRatio;
  const room = Math.max(0, saturatedRatio(state.airTemperature) - ratio);
  const floorDrive = saturatedRatio(state.benchTemperature) - ratio;
  const filmDrive = ratio - saturatedRatio(state.filmTemperature);
  const fog = inputs.foggerOn ? tent.foggerKg : 0;
  const fogShare = Math.min(1, room / FOG_ROOM);
  const floorWet = floorDrive < 0 ? 1 : Math.min(1, state.floorWaterKg / tent.floorWetKg);
  const filmWet = filmDrive > 0 ? 1 : Math.min(1, state.filmWaterKg / tent.filmWetKg);
  return {
    exchangeIn: exchangedAirKg(inputs, tent) * (inputs.houseHumidityRatio - ratio),
    plants: tent.plantVapourKg * room,
    floorToAir: tent.floorVapourKg * floorWet * floorDrive,
    airToFilm: tent.filmVapourKg * filmWet * filmDrive,
    fogToAir: fog * fogShare,
    fogToFloor: fog * (1 - fogShare),
  };
}

/** Net heat of air with leaves, film, and bench. Evaporation cools where it happens, dew warms where it settles. */
export function computeHeatFlows(
  state: TentState,
  inputs: TentInputs,
  water: WaterFlows,
  tent: TentParameters,
): HeatFlows {
  const { airTemperature: air, filmTemperature: film, benchTemperature: bench } = state;
  const airToFilm = tent.airToFilmW * (air - film);
  const benchToAir = tent.airToBenchW * (bench - air);
  const exchange = exchangedAirKg(inputs, tent) * AIR_J * (inputs.houseTemperature - air);
  const cooling = LATENT_J * (water.plants + water.fogToAir);
  return {
    air: tent.sunToLeaves * inputs.sunWm2 + exchange + benchToAir - airToFilm - cooling,
    film: tent.sunToFilm * inputs.sunWm2 + airToFilm + filmGain(film, inputs, tent) + LATENT_J * water.airToFilm,
    bench: tent.sunToBench * inputs.sunWm2 + benchGain(bench, inputs, tent) - benchToAir - LATENT_J * water.floorToAir,
  };
}

function filmGain(film: number, inputs: TentInputs, tent: TentParameters): number {
  return tent.filmToHouseW * (inputs.houseTemperature - film);
}

function benchGain(bench: number, inputs: TentInputs, tent: TentParameters): number {
  return inputs.benchHeatWm2 + tent.benchToHouseW * (inputs.houseTemperature - bench);
}

/** kg of dry air through the gap, per second and square metre of bench. */
function exchangedAirKg(inputs: TentInputs, tent: TentParameters): number {
  return (tent.airMassKg * airChangesPerHour(inputs.gapPercent, tent)) / 3600;
}
