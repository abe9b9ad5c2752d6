// The quantile of Student's t that 95 % intervals are made with.

const Z = 1.959963984540054;

/**
 * The 97.5 % quantile of Student's t with this many degrees of freedom (3 or more; within 0.5 % of it there, 0.05 % from 8 on).
 * Cornish–Fisher expansion (Abramowitz & Stegun 26.7.5, from memory).
 */
export function studentT975(degreesOfFreedom: number): number {
  const n = degreesOfFreedom;
  const z2 = Z * Z;
  const first = (Z * (z2 + 1)) / 4;
  const second = (Z * (5 * z2 ** 2 + 16 * z2 + 3)) / 96;
  const third = (Z * (3 * z2 ** 3 + 19 * z2 ** 2 + 17 * z2 - 15)) / 384;
  const fourth = (Z * (79 * z2 ** 4 + 776 * z2 ** 3 + 1482 * z2 ** 2 - 1920 * z2 - 945)) / 92_160;
  return Z + first / n + second / n ** 2 + third / n ** 3 + fourth / n ** 4;
}
