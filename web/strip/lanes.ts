// Where the lanes of a strip lie and how a value becomes a height. Pure; fractions count from the top of the plot, 0–1.

export interface Lane {
  readonly top: number;
  readonly bottom: number;
}

export interface ValueRange {
  readonly low: number;
  readonly high: number;
}

/**
 * A row's strip is small and names only days and stages; a chart has axes, clock times and larger marks; a plan has the scale of its values and
 * its stages, and no clock, since it is tied to no time.
 */
export type StripKind = 'row' | 'chart' | 'plan';

export interface StripLayout {
  readonly kind: StripKind;
  /** CSS pixels around the plot: top, right, bottom, left. */
  readonly padding: readonly [number, number, number, number];
  readonly humidity: Lane;
  readonly marks: Lane;
  readonly temperature: Lane;
  readonly textPx: number;
}

export const rowLayout: StripLayout = {
  kind: 'row',
  padding: [15, 1, 21, 1],
  humidity: { top: 0.02, bottom: 0.5 },
  marks: { top: 0.52, bottom: 0.7 },
  temperature: { top: 0.72, bottom: 0.99 },
  textPx: 11,
};

export const chartLayout: StripLayout = {
  kind: 'chart',
  padding: [22, 8, 22, 34],
  humidity: { top: 0.02, bottom: 0.47 },
  marks: { top: 0.49, bottom: 0.61 },
  temperature: { top: 0.63, bottom: 0.99 },
  textPx: 12,
};

export const planLayout: StripLayout = {
  ...chartLayout,
  kind: 'plan',
  padding: [22, 8, 24, 34],
};

/** The whole scale of a plot in which `range` just fills `lane`: the scale's max is at the top of the plot, its min at the bottom. */
export function scaleForLane(range: ValueRange, lane: Lane): readonly [min: number, max: number] {
  const wholeSpan = (range.high - range.low) / (lane.bottom - lane.top);
  const max = range.high + lane.top * wholeSpan;
  return [max - wholeSpan, max];
}

/** `base` widened to take in every number of the columns, outward to the next multiple of `step`. */
export function widenRange(
  base: ValueRange,
  columns: readonly (readonly (number | null)[])[],
  step: number,
): ValueRange {
  let { low, high } = base;
  for (const column of columns)
    for (const value of column) {
      if (value === null) continue;
      if (value < low) low = Math.floor(value / step) * step;
      if (value > high) high = Math.ceil(value / step) * step;
    }
  return { low, high };
}

/** The smallest of the steps with which at most `most` labels stand in a range; the widest when none does. */
export function labelStep(range: ValueRange, steps: readonly number[], most: number): number {
  return steps.find((step) => labelValues(range, step).length <= most) ?? steps.at(-1) ?? 1;
}

/** Round values to label inside a range: multiples of `step`, ends included when they are multiples. */
export function labelValues(range: ValueRange, step: number): readonly number[] {
  const values: number[] = [];
  for (let value = Math.ceil(range.low / step) * step; value <= range.high + 1e-9; value += step) values.push(value);
  return values;
}
