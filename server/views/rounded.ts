// Numbers as they are sent: without the noise of binary fractions, and without digits that no sensor has.

/** To that many decimals; null stays null. */
export function rounded(value: number | null, decimals: number): number | null {
  return value === null ? null : Number(value.toFixed(decimals));
}
