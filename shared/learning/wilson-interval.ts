// The take of a batch with its interval: what the count alone can tell. Trays and grafters make plants of a batch alike, so that the true
// uncertainty of a method or a climate is wider than this.

/** Of a count, 0–1. */
export interface TakeInterval {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** 97.5 % point of the normal distribution: a 95 % interval. */
export const Z_95 = 1.959963984540054;

/**
 * Share and Wilson score interval of `taken` of `plants` (Wilson 1927, J. Am. Stat. Assoc. 22:209; method 3 of Newcombe 1998, Stat. Med.
 * 17:857, without continuity correction): all p for which |share − p| ≤ z·√(p(1 − p)/n). Null without plants or where the count is impossible.
 */
export function wilsonInterval(taken: number, plants: number, z: number = Z_95): TakeInterval | null {
  if (!(plants > 0 && taken >= 0 && taken <= plants)) return null;
  const share = taken / plants;
  const weight = (z * z) / plants;
  const centre = (share + weight / 2) / (1 + weight);
  const reach = (z / (1 + weight)) * Math.sqrt((share * (1 - share)) / plants + weight / (4 * plants));
  // None and all taken: the end is exact, and rounding must not take it out of 0–1.
  return { share, low: taken === 0 ? 0 : centre - reach, high: taken === plants ? 1 : centre + reach };
}
