// Finds the rate with the least squares: a grid over what the readings can show at all, then golden section. Nothing is drawn or guessed.
import { projectWindow } from './project-window.ts';
import type { WindowSeries } from './relaxation-model.ts';

export interface FoundRate {
  readonly ratePerHour: number;
  /** The best lies at an end of what can be seen: settled within one reading, or hardly begun. */
  readonly edge: 'fast' | 'slow' | null;
}

/** Slower than this share of the window, the curve is a straight line to the eye (ours). */
const LEAST_PROGRESS = 0.1;
const GRID_RATIO = 1.2;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Golden steps: 0.618^40 of the bracket is 1e-9 of it; nearer the squares are too flat to tell anyway. */
const STEPS = 40;

/** The rate, 1/h, between a tenth of a settling time over the window and one settling time a reading. */
export function searchRate(series: WindowSeries): FoundRate {
  const rates = gridOf(series);
  const squares = rates.map((rate) => projectWindow(series, rate).squares);
  const best = squares.indexOf(Math.min(...squares));
  const [lower, upper] = [rates[best - 1], rates[best + 1]];
  if (lower === undefined) return { ratePerHour: rates[0] ?? 0, edge: 'slow' };
  if (upper === undefined) return { ratePerHour: rates[best] ?? 0, edge: 'fast' };
  return { ratePerHour: Math.exp(goldenSection(series, Math.log(lower), Math.log(upper))), edge: null };
}

function gridOf({ steps, values }: WindowSeries): number[] {
  const hours = steps.reduce((sum, step) => sum + step.hours, 0);
  const slowest = LEAST_PROGRESS / hours;
  const fastest = (values.length - 1) / hours;
  const count = Math.max(3, Math.ceil(Math.log(fastest / slowest) / Math.log(GRID_RATIO)) + 1);
  return Array.from({ length: count }, (_, i) => slowest * (fastest / slowest) ** (i / (count - 1)));
}

/** The minimum between two logarithms of a rate. */
function goldenSection(series: WindowSeries, from: number, to: number): number {
  const squaresAt = (logRate: number) => projectWindow(series, Math.exp(logRate)).squares;
  let [low, high] = [from, to];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let [atLeft, atRight] = [squaresAt(left), squaresAt(right)];
  for (let i = 0; i < STEPS; i++) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = squaresAt(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = squaresAt(right);
    }
  }
  return (low + high) / 2;
}
