// The humidity over saturated salt solutions: fixed points against which a probe is calibrated. NaCl with K2SO4 brackets healing humidity.
// Greenspan 1977, J. Res. NBS 81A:89, and OIML R 121 (read second-hand; the values of K2SO4 from memory).

export const saltNames = ['magnesium chloride', 'sodium chloride', 'potassium chloride', 'potassium sulfate'] as const;
export type SaltName = (typeof saltNames)[number];

interface SaltPoint {
  readonly formula: string;
  /** %RH over the saturated solution at 20, 25 and 30 °C. */
  readonly humidity: readonly [number, number, number];
}

/** %RH at 20, 25 and 30 °C. */
export const saltPoints: Readonly<Record<SaltName, SaltPoint>> = {
  'magnesium chloride': { formula: 'MgCl2', humidity: [33.07, 32.79, 32.45] },
  'sodium chloride': { formula: 'NaCl', humidity: [75.48, 75.3, 75.09] },
  'potassium chloride': { formula: 'KCl', humidity: [85.11, 84.35, 83.63] },
  'potassium sulfate': { formula: 'K2SO4', humidity: [97.59, 97.3, 97.0] },
};

const COOLEST = 20;
const MIDDLE = 25;
const WARMEST = 30;

/** %RH over a saturated salt at 20–30 °C, straight between the published temperatures; null outside, where no value stands here. */
export function saltHumidity(salt: SaltName, temperature: number): number | null {
  if (!(temperature >= COOLEST && temperature <= WARMEST)) return null;
  const [cool, middle, warm] = saltPoints[salt].humidity;
  const share = Math.abs(temperature - MIDDLE) / (WARMEST - MIDDLE);
  return middle + ((temperature < MIDDLE ? cool : warm) - middle) * share;
}
