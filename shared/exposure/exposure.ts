// Time-weighted statistics of one quantity over one span, gathered in one pass with constant memory. Exact for the straight line between
// readings; time in which nothing is known is counted as unknown and never guessed.
import { HOUR_MS } from '../units.ts';
import { LimitTally, type PerLimit, perLimit } from './limit-tally.ts';
import { areJoined, type TimedValue } from './segments.ts';
import { cutLine, type Line } from './straight-line.ts';

export interface ExposureSpan {
  readonly fromMs: number;
  readonly toMs: number;
  /** Longest gap between two readings that is still joined, ms. */
  readonly silenceMs: number;
  /** Limits above which time and degree-hours are counted. */
  readonly above: readonly number[];
  readonly below?: readonly number[];
}

/** Above and below are strict: a line lying on a limit is neither. Mean, min and max are null when no reading lies in the span. Degree-hours are in the quantity's unit times hours. */
export interface ExposureResult {
  readonly mean: number | null;
  readonly min: number | null;
  readonly max: number | null;
  /** Integral of the value over the known time, unit times hours. */
  readonly valueHours: number;
  readonly knownHours: number;
  readonly unknownHours: number;
  readonly hoursAbove: PerLimit;
  readonly minutesAbove: PerLimit;
  readonly degreeHoursAbove: PerLimit;
  readonly hoursBelow: PerLimit;
  readonly minutesBelow: PerLimit;
  readonly degreeHoursBelow: PerLimit;
}

export interface Exposure {
  /** Takes the next reading in time order; one that is not later than the last is passed over. */
  add(timeMs: number, value: number): void;
  /** The figures so far. The time after the last reading is unknown until a later one is added. */
  result(): ExposureResult;
}

/**
 * Starts the statistics of the span [fromMs, toMs]. Lines that reach over an end of the span are cut there, at their value on the line. A lone
 * reading (nothing near enough to join it to) counts for min and max, and for the mean while no time is known, but is zero known hours.
 */
export function createExposure(span: ExposureSpan): Exposure {
  return new RunningExposure(span);
}

class RunningExposure implements Exposure {
  readonly #span: ExposureSpan;
  readonly #above: readonly LimitTally[];
  readonly #below: readonly LimitTally[];
  #last: TimedValue | null = null;
  #min = Number.POSITIVE_INFINITY;
  #max = Number.NEGATIVE_INFINITY;
  #knownMs = 0;
  /** Value times milliseconds. */
  #area = 0;
  #readings = 0;
  #sum = 0;

  constructor(span: ExposureSpan) {
    this.#span = span;
    this.#above = span.above.map((limit) => new LimitTally(limit, 1));
    this.#below = (span.below ?? []).map((limit) => new LimitTally(limit, -1));
  }

  add(timeMs: number, value: number): void {
    const last = this.#last;
    if (last !== null && timeMs <= last.timeMs) return;
    this.#last = { timeMs, value };
    if (last !== null && areJoined(last.timeMs, timeMs, this.#span.silenceMs)) {
      this.#addLine({ fromMs: last.timeMs, toMs: timeMs, fromValue: last.value, toValue: value });
    }
    if (timeMs >= this.#span.fromMs && timeMs <= this.#span.toMs) this.#addReading(value);
  }

  result(): ExposureResult {
    const isEmpty = this.#min > this.#max;
    return {
      mean: this.#mean(),
      min: isEmpty ? null : this.#min,
      max: isEmpty ? null : this.#max,
      valueHours: this.#area / HOUR_MS,
      knownHours: this.#knownMs / HOUR_MS,
      unknownHours: Math.max(0, this.#span.toMs - this.#span.fromMs - this.#knownMs) / HOUR_MS,
      hoursAbove: perLimit(this.#above, 'hours'),
      minutesAbove: perLimit(this.#above, 'minutes'),
      degreeHoursAbove: perLimit(this.#above, 'degreeHours'),
      hoursBelow: perLimit(this.#below, 'hours'),
      minutesBelow: perLimit(this.#below, 'minutes'),
      degreeHoursBelow: perLimit(this.#below, 'degreeHours'),
    };
  }

  #mean(): number | null {
    // Rounding may carry the mean of a flat line a last digit past its own extremes.
    if (this.#knownMs > 0) return Math.min(this.#max, Math.max(this.#min, this.#area / this.#knownMs));
    return this.#readings > 0 ? this.#sum / this.#readings : null;
  }

  #addReading(value: number): void {
    this.#readings += 1;
    this.#sum += value;
    this.#widen(value);
  }

  #addLine(line: Line): void {
    const cut = cutLine(line, this.#span.fromMs, this.#span.toMs);
    if (cut === null) return;
    const { fromValue, toValue } = cut;
    const lengthMs = cut.toMs - cut.fromMs;
    this.#knownMs += lengthMs;
    this.#area += ((fromValue + toValue) / 2) * lengthMs;
    this.#widen(fromValue);
    this.#widen(toValue);
    for (const tally of this.#above) tally.add(fromValue, toValue, lengthMs);
    for (const tally of this.#below) tally.add(fromValue, toValue, lengthMs);
  }

  #widen(value: number): void {
    if (value < this.#min) this.#min = value;
    if (value > this.#max) this.#max = value;
  }
}
