// Humidity over saturated salts: Greenspan 1977, J. Res. NBS 81A:89, and OIML R 121, %RH at 20, 25 and 30 °C, as quoted second-hand; potassium
// sulfate from memory.
import { expect, test } from 'vitest';
import { saltHumidity } from '../../shared/readings/salt-points.ts';

test.each([
  { salt: 'magnesium chloride', at20: 33.07, at25: 32.79, at30: 32.45 },
  { salt: 'sodium chloride', at20: 75.48, at25: 75.3, at30: 75.09 },
  { salt: 'potassium chloride', at20: 85.11, at25: 84.35, at30: 83.63 },
  { salt: 'potassium sulfate', at20: 97.59, at25: 97.3, at30: 97.0 },
] as const)('$salt stands at $at20, $at25 and $at30 %RH', ({ salt, at20, at25, at30 }) => {
  expect([20, 25, 30].map((temperature) => saltHumidity(salt, temperature))).toEqual([at20, at25, at30]);
});
