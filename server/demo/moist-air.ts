// Moist air by its humidity ratio, as the tent model keeps it. Sea-level pressure: the invented nursery stands at 0 m.
import { humidityRatio, saturationKpa } from '../../shared/air/vapour.ts';

/** ISA sea-level pressure. */
const PRESSURE_KPA = 101.325;
/** Molar mass of water over that of dry air (ASHRAE Fundamentals 2017, ch. 1). */
const MOLAR_RATIO = 0.621945;

/** Humidity ratio of saturated air at `temperature` °C, kg of water per kg of dry air. */
export function saturatedRatio(temperature: number): number {
  return humidityRatio(saturationKpa(temperature), PRESSURE_KPA);
}

/** Humidity ratio, kg/kg, of air at `temperature` °C and `humidity` %RH. */
export function ratioOf(temperature: number, humidity: number): number {
  return humidityRatio((humidity / 100) * saturationKpa(temperature), PRESSURE_KPA);
}

/** Vapour pressure in kPa of air with humidity ratio `ratio` kg/kg: w = 0.621945 e / (p − e), solved for e. */
function vapourKpaOf(ratio: number): number {
  return (ratio * PRESSURE_KPA) / (MOLAR_RATIO + ratio);
}

/** %RH of air at `temperature` °C with humidity ratio `ratio` kg/kg; above 100 when it is supersaturated. */
export function humidityOf(temperature: number, ratio: number): number {
  return (100 * vapourKpaOf(ratio)) / saturationKpa(temperature);
}
