// For how much of the known time a quantity was inside a band that itself moves with time.
//
// Accuracy: between readings the value is the straight line, and the band is taken as straight over steps of at most one minute. So the figure
// is exact while the limits are constant or straight; at a limit that jumps, at most the one step around the jump (a minute) is off; at a
// limit that bends, less than that.
import { HOUR_MS, MINUTE_MS } from '../units.ts';
import { areJoined, type TimedValue } from './segments.ts';
import { cutLine, type Line, shareAboveZero, valueAt } from './straight-line.ts';

const LONGEST_STEP_MS = MINUTE_MS;

/** The limits of one quantity at an instant; both belong to the inside. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

export interface CorridorSpan {
  readonly fromMs: number;
  readonly toMs: number;
  /** Longest gap between two readings that is still joined, ms. */
  readonly silenceMs: number;
  /** The band at an instant; null = none holds then, and that time is not judged. */
  readonly bandAt: (ms: number) => Band | null;
}

export interface CorridorShareResult {
  readonly knownHours: number;
  /** Known time for which there was a band. */
  readonly judgedHours: number;
  readonly insideHours: number;
  readonly aboveHours: number;
  readonly belowHours: number;
  /** `insideHours / judgedHours`, 0–1; null while nothing has been judged. */
  readonly share: number | null;
}

export interface CorridorShare {
  /** Takes the next reading in time order; one that is not later than the last is passed over. */
  add(timeMs: number, value: number): void;
  result(): CorridorShareResult;
}

/** Starts the count over [fromMs, toMs]; constant memory. */
export function createCorridorShare(span: CorridorSpan): CorridorShare {
  return new RunningShare(span);
}

class RunningShare implements CorridorShare {
  readonly #span: CorridorSpan;
  #last: TimedValue | null = null;
  #knownMs = 0;
  #judgedMs = 0;
  #aboveMs = 0;
  #belowMs = 0;

  constructor(span: CorridorSpan) {
    this.#span = span;
  }

  add(timeMs: number, value: number): void {
    const last = this.#last;
    if (last !== null && timeMs <= last.timeMs) return;
    this.#last = { timeMs, value };
    if (last === null || !areJoined(last.timeMs, timeMs, this.#span.silenceMs)) return;
    const whole = { fromMs: last.timeMs, toMs: timeMs, fromValue: last.value, toValue: value };
    const line = cutLine(whole, this.#span.fromMs, this.#span.toMs);
    if (line !== null) this.#addLine(line);
  }

  result(): CorridorShareResult {
    const insideMs = Math.max(0, this.#judgedMs - this.#aboveMs - this.#belowMs);
    return {
      knownHours: this.#knownMs / HOUR_MS,
      judgedHours: this.#judgedMs / HOUR_MS,
      insideHours: insideMs / HOUR_MS,
      aboveHours: this.#aboveMs / HOUR_MS,
      belowHours: this.#belowMs / HOUR_MS,
      share: this.#judgedMs === 0 ? null : insideMs / this.#judgedMs,
    };
  }

  #addLine(line: Line): void {
    const lengthMs = line.toMs - line.fromMs;
    this.#knownMs += lengthMs;
    const steps = Math.ceil(lengthMs / LONGEST_STEP_MS);
    let from = this.#pointAt(line, line.fromMs);
    for (let i = 1; i <= steps; i++) {
      const to = this.#pointAt(line, i === steps ? line.toMs : line.fromMs + (lengthMs * i) / steps);
      this.#addStep(from, to, lengthMs / steps);
      from = to;
    }
  }

  #pointAt(line: Line, ms: number): Point {
    return { value: valueAt(line, ms), band: this.#span.bandAt(ms) };
  }

  #addStep(from: Point, to: Point, stepMs: number): void {
    if (from.band === null || to.band === null) return;
    this.#judgedMs += stepMs;
    this.#aboveMs += shareAboveZero(from.value - from.band.high, to.value - to.band.high) * stepMs;
    this.#belowMs += shareAboveZero(from.band.low - from.value, to.band.low - to.value) * stepMs;
  }
}

interface Point {
  readonly value: number;
  readonly band: Band | null;
}
