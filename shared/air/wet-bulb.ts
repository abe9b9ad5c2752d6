// The wet-bulb temperature: what a wetted surface in moving air cools down to. Over liquid water only.
import { humidityRatio, saturationKpa, vapourKpa } from './vapour.ts';

/** Fifty halvings of a 300 °C bracket end below 1e-12 °C. */
const HALVINGS = 50;
const LOWEST = -100;

/**
 * Thermodynamic wet-bulb temperature, °C, from °C, %RH (held to 0–100) and air pressure in kPa.
 * The humidity ratio of ASHRAE Fundamentals 2017 ch. 1 eq. 33, solved for the wet bulb by halving.
 * Below 0 °C the bulb is taken as supercooled water, not ice. Never above the temperature; equal to it at saturation.
 */
export function wetBulb(temperature: number, humidity: number, pressureKpa: number): number {
  if (humidity >= 100) return temperature;
  const target = humidityRatio(vapourKpa(temperature, humidity), pressureKpa);
  let low = Math.min(LOWEST, temperature);
  let high = temperature;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (ratioAtWetBulb(temperature, middle, pressureKpa) > target) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Humidity ratio of air at a temperature whose wet bulb is known; kJ/kg coefficients of eq. 33. */
function ratioAtWetBulb(temperature: number, bulb: number, pressureKpa: number): number {
  const saturated = humidityRatio(saturationKpa(bulb), pressureKpa);
  const evaporation = (2501 - 2.326 * bulb) * saturated;
  return (evaporation - 1.006 * (temperature - bulb)) / (2501 + 1.86 * temperature - 4.186 * bulb);
}
