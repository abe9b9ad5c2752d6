// How far the crew opens the tent on the two days of venting: the stairs that bring its air down to house level.
import { HOUR_MS } from '../../shared/units.ts';

/** A change of the gap, counted from the start of venting. */
interface GapStep {
  readonly afterHours: number;
  readonly gapPercent: number;
}

/** Ours: opened a little further at 07, 12 or 13, 18 and 22 o'clock, so that the simulated tent dries step by step, slower at night. */
export const ventingGaps: readonly GapStep[] = [
  { afterHours: 0, gapPercent: 18 },
  { afterHours: 5, gapPercent: 20 },
  { afterHours: 11, gapPercent: 21 },
  { afterHours: 24, gapPercent: 25 },
  { afterHours: 30, gapPercent: 28 },
  { afterHours: 35, gapPercent: 37 },
  { afterHours: 39, gapPercent: 50 },
];

/** Hours of venting after which the tent stands fully open. */
export const VENTING_HOURS = 48;

/** The gap, 0–100 %, `timeMs` being any instant and `ventingMs` the start of venting. Closed before, fully open after the last step. */
export function ventingGapAt(timeMs: number, ventingMs: number): number {
  const hours = (timeMs - ventingMs) / HOUR_MS;
  if (hours >= VENTING_HOURS) return 100;
  return ventingGaps.findLast((step) => step.afterHours <= hours)?.gapPercent ?? 0;
}
