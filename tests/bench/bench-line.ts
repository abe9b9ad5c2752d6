// One line of the benchmarks: a figure, the floor measured in the same run, and their ratio. Lines are printed and kept, never asserted.

export interface BenchLine {
  readonly name: string;
  readonly unit: string;
  /** The same parts doing only the unavoidable. */
  readonly floor: number;
  readonly measured: number;
  /** `measured / floor`. */
  readonly ratio: number;
  /** What is aimed at, in words. */
  readonly bar: string;
}

/** Makes a line of pairs measured one after the other: the pair in the middle, by its ratio, speaks for all. */
export function makeLine(
  name: string,
  unit: string,
  bar: string,
  pairs: readonly { readonly floor: number; readonly measured: number }[],
): BenchLine {
  const sorted = pairs
    .map((pair) => ({ ...pair, ratio: pair.measured / pair.floor }))
    .sort((a, b) => a.ratio - b.ratio);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined) throw new Error(`nothing was measured for "${name}"`);
  return { name, unit, bar, ...middle };
}

export function sayLine({ name, unit, floor, measured, ratio, bar }: BenchLine): string {
  const round = (value: number) => (value >= 100 ? Math.round(value).toLocaleString('en') : value.toFixed(3));
  return `${ratio.toFixed(2).padStart(6)}  (${bar})  ${name}: ${round(measured)} ${unit}, floor ${round(floor)} ${unit}`;
}
