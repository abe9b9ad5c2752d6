// Kendall's τ: of all pairs of batches, in how many more of the one goes with more of the other. It asks for no straight line and no bell curve.

/** Counts of pairs: both differ the same way, the opposite way, or one of them is equal. */
export interface PairCounts {
  readonly concordant: number;
  readonly discordant: number;
  readonly tied: number;
}

/** Pairs of values given at the same index; both lists have the same length. */
export function countPairs(xs: readonly number[], ys: readonly number[]): PairCounts {
  let [concordant, discordant, tied] = [0, 0, 0];
  for (let i = 0; i < xs.length; i++) {
    for (let j = 0; j < i; j++) {
      const sign = Math.sign((xs[i] ?? 0) - (xs[j] ?? 0)) * Math.sign((ys[i] ?? 0) - (ys[j] ?? 0));
      if (sign > 0) concordant++;
      else if (sign < 0) discordant++;
      else tied++;
    }
  }
  return { concordant, discordant, tied };
}

/** τ-b, −1 to 1, ties taken out of the pairs that could have agreed (Kendall 1945, from memory); null when either list is constant. */
export function kendallTau(xs: readonly number[], ys: readonly number[]): number | null {
  const { concordant, discordant } = countPairs(xs, ys);
  const pairs = (xs.length * (xs.length - 1)) / 2;
  const untied = Math.sqrt((pairs - tiedPairs(xs)) * (pairs - tiedPairs(ys)));
  return untied === 0 ? null : Math.max(-1, Math.min(1, (concordant - discordant) / untied));
}

/** Sizes of the groups of equal values. */
export function tieGroups(values: readonly number[]): number[] {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return [...sizes.values()];
}

function tiedPairs(values: readonly number[]): number {
  return tieGroups(values).reduce((sum, size) => sum + (size * (size - 1)) / 2, 0);
}
