// A clock that runs faster than the wall's, the same in every process that is given the same numbers: a minute of delay passes in a second.
import type { Clock } from '../../server/clock.ts';

export interface FastClockNumbers {
  /** What it shows at `realMs`. */
  readonly startMs: number;
  readonly realMs: number;
  readonly speed: number;
}

export function createFastClock({ startMs, realMs, speed }: FastClockNumbers): Clock {
  const nowMs = () => Math.floor(startMs + (Date.now() - realMs) * speed);
  return { nowMs, steadyMs: nowMs };
}
