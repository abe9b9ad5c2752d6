// Everything the screens and the `air` command say about air, from what a probe measures. It rounds nothing.
import { pressureAtAltitudeKpa } from './standard-atmosphere.ts';
import { dewPoint, humidityRatio, saturationKpa, vapourKpa } from './vapour.ts';
import { wetBulb } from './wet-bulb.ts';

/** Gas constant of water vapour, J/(kg K) (ASHRAE Fundamentals 2017 ch. 1). */
const VAPOUR_GAS_CONSTANT = 461.524;

/** kPa, °C, g of water to 1 m³ of air, kg of water to 1 kg of dry air. `dewPoint` is null in perfectly dry air. */
export interface AirState {
  readonly saturationKpa: number;
  readonly vapourKpa: number;
  readonly vpdKpa: number;
  readonly dewPoint: number | null;
  readonly wetBulb: number;
  readonly absoluteHumidityGm3: number;
  readonly humidityRatio: number;
}

/**
 * Describes air at a temperature in °C, humidity in %RH and site altitude in m.
 * Meant for 0–60 °C and 0–100 %RH. Above 100 %RH (a wet sensor) the air is described as saturated, below 0 as dry.
 * At the standard pressure of the altitude; over liquid water, never ice.
 */
export function describeAir(air: { temperature: number; humidity: number; altitudeM: number }): AirState {
  const pressureKpa = pressureAtAltitudeKpa(air.altitudeM);
  const saturation = saturationKpa(air.temperature);
  const vapour = vapourKpa(air.temperature, air.humidity);
  return {
    saturationKpa: saturation,
    vapourKpa: vapour,
    vpdKpa: saturation - vapour,
    dewPoint: dewPoint(vapour),
    wetBulb: wetBulb(air.temperature, air.humidity, pressureKpa),
    absoluteHumidityGm3: (vapour * 1e6) / (VAPOUR_GAS_CONSTANT * (air.temperature + 273.15)),
    humidityRatio: humidityRatio(vapour, pressureKpa),
  };
}
