// The middle of some values.

/** Median; the mean of the two middle values when their number is even; null for none. */
export function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}
