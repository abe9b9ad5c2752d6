// Counts for how long, and by how much, a series of straight lines is beyond one limit.
import { HOUR_MS, MINUTE_MS } from '../units.ts';
import { meanAboveZero, shareAboveZero } from './straight-line.ts';

/** Keyed by the limit as text: `{"28": 1.5}`. */
export type PerLimit = Readonly<Record<string, number>>;

export class LimitTally {
  readonly limit: number;
  /** 1 = above the limit counts, −1 = below it. */
  readonly #side: 1 | -1;
  #beyondMs = 0;
  /** Distance beyond the limit times milliseconds. */
  #area = 0;

  constructor(limit: number, side: 1 | -1) {
    this.limit = limit;
    this.#side = side;
  }

  /** Takes a straight line from value `a` to value `b` that lasts `lengthMs`. */
  add(a: number, b: number, lengthMs: number): void {
    const from = this.#side * (a - this.limit);
    const to = this.#side * (b - this.limit);
    this.#beyondMs += shareAboveZero(from, to) * lengthMs;
    this.#area += meanAboveZero(from, to) * lengthMs;
  }

  get hours(): number {
    return this.#beyondMs / HOUR_MS;
  }

  get minutes(): number {
    return this.#beyondMs / MINUTE_MS;
  }

  /** The integral of the distance beyond the limit, in the quantity's unit times hours. */
  get degreeHours(): number {
    return this.#area / HOUR_MS;
  }
}

/** One figure of several tallies, keyed by their limits. */
export function perLimit(tallies: readonly LimitTally[], figure: 'hours' | 'minutes' | 'degreeHours'): PerLimit {
  return Object.fromEntries(tallies.map((tally) => [String(tally.limit), tally[figure]]));
}
