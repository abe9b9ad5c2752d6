// Humidity sent as a ratio (SenML unit `/`).

/** %RH from a ratio (1 = 100 %RH), without the tail that binary fractions leave: 0.931 gives 93.1, not 93.10000000000001. */
export function percentFromRatio(ratio: number): number {
  return Math.round(ratio * 1e8) / 1e6;
}
