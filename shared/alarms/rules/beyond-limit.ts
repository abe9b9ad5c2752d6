// Judges one value against a limit and an outer limit with a deadband; the shared body of heat, cold, dry and wet.
import type { Level } from '../alarm.ts';
import { type Judgement, noLimits } from './rule.ts';

interface Bounds {
  readonly limit: number;
  readonly outer: number | null;
  /** +1: beyond means above; −1: beyond means below. */
  readonly worse: 1 | -1;
  readonly deadband: number;
}

/** Level of `value`: a level that stands is left only when the value is back inside by the deadband. */
export function judgeBeyond(value: number | null, held: Level, bounds: Bounds): Judgement {
  const { limit, outer, worse, deadband } = bounds;
  const limits = [limit, outer] as const;
  if (value === null) return { probeId: null, level: 'unknown', value, limits };
  const isBeyond = (bound: number, level: Level) => worse * (value - bound) > (held >= level ? -deadband : 0);
  if (outer !== null && isBeyond(outer, 2)) return { probeId: null, level: 2, value, limits };
  return { probeId: null, level: isBeyond(limit, 1) ? 1 : 0, value, limits };
}

/** Without a batch, or outside its stages, nothing is beyond anything. */
export const nothingBeyond: Judgement = { probeId: null, level: 0, value: null, limits: noLimits };
