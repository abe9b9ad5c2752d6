// Readings as scaled integers: ten-thousandths of °C and %RH, and flags packed into one small number.
import type { Flag } from '../../shared/readings/reading.ts';

export const SCALE = 10_000;

/** °C or %RH → stored integer; null stays null. Exact for values with up to four decimals. */
export function toScaled(value: number | null): number | null {
  return value === null ? null : Math.round(value * SCALE);
}

/** Stored integer → °C or %RH. */
export function fromScaled(stored: number | null): number | null {
  return stored === null ? null : stored / SCALE;
}

/** Temperature flag in bits 0–3, humidity flag in bits 4–7, late in bit 8. */
export function packFlags(temperature: Flag, humidity: Flag, late: boolean): number {
  return temperature | (humidity << 4) | (late ? 256 : 0);
}

export function unpackFlags(packed: number): { temperatureFlag: Flag; humidityFlag: Flag; late: boolean } {
  return {
    temperatureFlag: (packed & 15) as Flag,
    humidityFlag: ((packed >> 4) & 15) as Flag,
    late: (packed & 256) !== 0,
  };
}
