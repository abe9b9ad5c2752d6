// Suppression by design: whether the air of a chamber is disturbed on purpose right now, by people at work in it or by a step of venting.
// Worked out from the batch's log alone, so that a restart changes nothing.
import { MINUTE_MS } from '../units.ts';

/** How long an announced step of venting may take to settle; ours. */
const STEP_SETTLES_MS = 30 * MINUTE_MS;
/** Closed again after work, the air needs this long to come back, ms; ours. */
export const AIR_RECOVERS_MS = 10 * MINUTE_MS;

export interface Suppression {
  readonly cause: 'working' | 'vent-step';
  readonly untilMs: number;
  /** Who logged it. */
  readonly person: string;
}

/** The part of a log entry that tells of a disturbance. */
export interface DisturbanceEntry {
  readonly kind: string;
  readonly atMs: number;
  readonly person: string;
  readonly gapPercent: number | null;
  /** How long a `working` entry says that it will take. */
  readonly minutes?: number | null | undefined;
}

/**
 * What disturbs the air at `nowMs`, or null: the cause that lasts longest. `log` in order of time. `working` lasts its minutes, or up to
 * `work-done`, and then ten minutes more; a gap that is logged anew but unchanged is no step.
 */
export function suppressionAt(log: readonly DisturbanceEntry[], nowMs: number): Suppression | null {
  const known = log.filter(({ atMs }) => atMs <= nowMs);
  const found = [workIn(known), stepIn(known)].flatMap((one) => (one !== null && one.untilMs > nowMs ? [one] : []));
  return found.reduce<Suppression | null>((a, b) => (a === null || b.untilMs > a.untilMs ? b : a), null);
}

function workIn(log: readonly DisturbanceEntry[]): Suppression | null {
  const work = log.findLast(({ kind }) => kind === 'working');
  if (work === undefined) return null;
  const plannedEndMs = work.atMs + (work.minutes ?? 0) * MINUTE_MS;
  const doneMs = log.slice(log.indexOf(work)).find(({ kind }) => kind === 'work-done')?.atMs ?? Infinity;
  return { cause: 'working', untilMs: Math.min(plannedEndMs, doneMs) + AIR_RECOVERS_MS, person: work.person };
}

function stepIn(log: readonly DisturbanceEntry[]): Suppression | null {
  const gaps = log.filter(({ gapPercent }) => gapPercent !== null);
  const step = gaps.findLast(({ gapPercent }, index) => gapPercent !== (gaps[index - 1]?.gapPercent ?? 0));
  if (step === undefined) return null;
  return { cause: 'vent-step', untilMs: step.atMs + STEP_SETTLES_MS, person: step.person };
}
