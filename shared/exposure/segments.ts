// A series of samples as straight lines and unknown gaps. Nothing is ever drawn across a gap longer than the allowed silence.
import type { Line } from './straight-line.ts';

export interface TimedValue {
  readonly timeMs: number;
  readonly value: number;
}

export type Segment =
  | ({ readonly kind: 'line' } & Line)
  | { readonly kind: 'unknown'; readonly fromMs: number; readonly toMs: number };

/** True when two readings next to each other may be joined by a straight line: a gap of exactly `silenceMs` still may. */
export function areJoined(earlierMs: number, laterMs: number, silenceMs: number): boolean {
  return laterMs - earlierMs <= silenceMs;
}

/**
 * The segments between samples in time order, one at a time. A sample that is not later than the one before it is passed over, so is what a
 * caller leaves out as bad: its neighbours are joined if they are near enough.
 */
export function* joinSamples(samples: Iterable<TimedValue>, silenceMs: number): Generator<Segment> {
  let last: TimedValue | null = null;
  for (const sample of samples) {
    if (last !== null && sample.timeMs <= last.timeMs) continue;
    if (last !== null) yield segmentBetween(last, sample, silenceMs);
    last = sample;
  }
}

function segmentBetween(earlier: TimedValue, later: TimedValue, silenceMs: number): Segment {
  const span = { fromMs: earlier.timeMs, toMs: later.timeMs };
  if (!areJoined(earlier.timeMs, later.timeMs, silenceMs)) return { kind: 'unknown', ...span };
  return { kind: 'line', ...span, fromValue: earlier.value, toValue: later.value };
}
