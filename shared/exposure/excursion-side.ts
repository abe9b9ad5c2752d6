// Follows one quantity on one side of its corridor and gives each excursion when it has ended.
import { HOUR_MS } from '../units.ts';
import { areJoined } from './segments.ts';
import { meanAboveZero } from './straight-line.ts';

export type Quantity = 'temperature' | 'humidity';
export type Side = 'low' | 'high';

/** A stretch of time outside the corridor. Times are ms since the epoch; a crossing may fall between two milliseconds. */
export interface Excursion {
  readonly quantity: Quantity;
  readonly side: Side;
  /** Where the line crosses the limit; the first reading outside when what was before it is not known. */
  readonly fromMs: number;
  /** Where the line crosses back; the last reading outside when it did not. */
  readonly toMs: number;
  /** The value furthest outside the limit that held at its time. */
  readonly peak: number;
  readonly peakMs: number;
  /** Integral of the distance outside: °C·h or %RH·h. */
  readonly degreeHours: number;
  /** A silence followed: how long it truly lasted is not known. */
  readonly endedByGap: boolean;
  /** The series ended while it was still outside. */
  readonly stillOutside: boolean;
}

interface Point {
  readonly timeMs: number;
  readonly value: number;
  /** Distance outside the limit; ≤ 0 inside. */
  readonly excess: number;
}

interface OpenExcursion {
  readonly fromMs: number;
  worst: Point;
  area: number;
}

type Ending = 'returned' | 'gap' | 'end';

export class ExcursionSide {
  readonly #quantity: Quantity;
  readonly #side: Side;
  readonly #silenceMs: number;
  #last: Point | null = null;
  #open: OpenExcursion | null = null;

  constructor(quantity: Quantity, side: Side, silenceMs: number) {
    this.#quantity = quantity;
    this.#side = side;
    this.#silenceMs = silenceMs;
  }

  /** Takes the next reading and the limit that holds at it (null = none); gives the excursion that ends with it, if one does. */
  add(timeMs: number, value: number, limit: number | null): Excursion | null {
    const last = this.#last;
    const isGap = last !== null && !areJoined(last.timeMs, timeMs, this.#silenceMs);
    if (last === null || isGap || limit === null) {
      const ended = this.#end(last?.timeMs ?? timeMs, isGap ? 'gap' : 'returned');
      this.#last = limit === null ? null : this.#pointAt(timeMs, value, limit);
      if (this.#last !== null && this.#last.excess > 0) this.#start(timeMs, this.#last);
      return ended;
    }
    const point = this.#pointAt(timeMs, value, limit);
    this.#last = point;
    return this.#follow(last, point);
  }

  /** The excursion that is going on, as far as it is known; null when inside. */
  current(): Excursion | null {
    return this.#describe(this.#last?.timeMs ?? 0, 'end');
  }

  #pointAt(timeMs: number, value: number, limit: number): Point {
    return { timeMs, value, excess: this.#side === 'high' ? value - limit : limit - value };
  }

  #follow(from: Point, to: Point): Excursion | null {
    if (from.excess <= 0 && to.excess > 0) this.#start(crossingMs(from, to), to);
    const open = this.#open;
    if (open === null) return null;
    open.area += meanAboveZero(from.excess, to.excess) * (to.timeMs - from.timeMs);
    if (to.excess > open.worst.excess) open.worst = to;
    return to.excess > 0 ? null : this.#end(crossingMs(from, to), 'returned');
  }

  #start(fromMs: number, worst: Point): void {
    this.#open = { fromMs, worst, area: 0 };
  }

  #end(toMs: number, ending: Ending): Excursion | null {
    const ended = this.#describe(toMs, ending);
    this.#open = null;
    return ended;
  }

  #describe(toMs: number, ending: Ending): Excursion | null {
    if (this.#open === null) return null;
    const { fromMs, worst, area } = this.#open;
    return {
      quantity: this.#quantity,
      side: this.#side,
      fromMs,
      toMs,
      peak: worst.value,
      peakMs: worst.timeMs,
      degreeHours: area / HOUR_MS,
      endedByGap: ending === 'gap',
      stillOutside: ending === 'end',
    };
  }
}

/** Where the line between two points of different sign meets the limit. */
function crossingMs(from: Point, to: Point): number {
  return from.timeMs + ((to.timeMs - from.timeMs) * from.excess) / (from.excess - to.excess);
}
