// The straight line between two readings: the exact arithmetic on which all exposure figures rest.

/** A straight piece of a series: known at every instant between its ends. */
export interface Line {
  readonly fromMs: number;
  readonly toMs: number;
  readonly fromValue: number;
  readonly toValue: number;
}

/** Value of the line at an instant between its ends; at an end exactly the value given there. */
export function valueAt(line: Line, ms: number): number {
  if (ms === line.toMs) return line.toValue;
  const share = (ms - line.fromMs) / (line.toMs - line.fromMs);
  return line.fromValue + (line.toValue - line.fromValue) * share;
}

/** The part of a line between two instants; null when nothing of it lies there. Uncut lines come back as they are. */
export function cutLine(line: Line, fromMs: number, toMs: number): Line | null {
  if (line.fromMs >= fromMs && line.toMs <= toMs) return line;
  const cutFromMs = Math.max(line.fromMs, fromMs);
  const cutToMs = Math.min(line.toMs, toMs);
  if (cutToMs <= cutFromMs) return null;
  return {
    fromMs: cutFromMs,
    toMs: cutToMs,
    fromValue: valueAt(line, cutFromMs),
    toValue: valueAt(line, cutToMs),
  };
}

/** Share (0–1) of its length for which a line from `a` to `b` is above zero; a line lying on zero is not above it. */
export function shareAboveZero(a: number, b: number): number {
  const top = Math.max(a, b);
  const bottom = Math.min(a, b);
  if (top <= 0) return 0;
  return bottom >= 0 ? 1 : top / (top - bottom);
}

/** Mean over its length of the part of a line from `a` to `b` that is above zero: the integral of max(0, line) divided by the length. */
export function meanAboveZero(a: number, b: number): number {
  const top = Math.max(a, b);
  const bottom = Math.min(a, b);
  if (top <= 0) return 0;
  return bottom >= 0 ? (a + b) / 2 : (top * top) / (2 * (top - bottom));
}
