// How far a stage has come at an instant: what ramps and stairs follow. A hold stops it, and nothing done later changes how it stood before.
import type { HeldTime } from './healing-clock.ts';

/** At `atMs` this share (0–1) of the stage was done; straight lines between. */
export interface PacePoint {
  readonly atMs: number;
  readonly share: number;
}

/** A stage that was held, or ended otherwise than planned. */
interface PacedStage {
  readonly startMs: number;
  readonly endMs: number;
  readonly held: readonly HeldTime[];
  /** The end of the stage as the plan stood just before an instant: with the holds and moves made until then. */
  readonly plannedEndMs: (beforeMs: number) => number;
}

/**
 * The pace of a stage: steadily toward the end planned at the time, standing still during holds, re-paced to the new end after each.
 * A stage that a move cut short ends below 1; one that a move drew out stands at 1 from its planned end on.
 */
export function paceStage({ startMs, endMs, held, plannedEndMs }: PacedStage): PacePoint[] {
  let pace: PacePoint[] = [{ atMs: startMs, share: 0 }];
  for (const { fromMs, toMs } of held) {
    if (toMs <= startMs || fromMs >= endMs) continue;
    const stopMs = Math.max(fromMs, startMs);
    pace = advance(pace, stopMs, plannedEndMs(stopMs));
    pace = [...pace, { atMs: Math.min(toMs, endMs), share: pace.at(-1)?.share ?? 0 }];
  }
  return advance(pace, endMs, plannedEndMs(endMs));
}

/** The first instant at which `share` is done; null when the stage never comes that far. */
export function instantOfShare(pace: readonly PacePoint[], share: number): number | null {
  let before = pace[0];
  for (const point of pace) {
    if (before !== undefined && point.share >= share) return crossing(before, point, share);
    before = point;
  }
  return null;
}

function crossing(before: PacePoint, after: PacePoint, share: number): number {
  if (after.share === before.share) return before.atMs;
  return before.atMs + ((share - before.share) / (after.share - before.share)) * (after.atMs - before.atMs);
}

function advance(pace: readonly PacePoint[], untilMs: number, plannedEndMs: number): PacePoint[] {
  const last = pace.at(-1);
  if (last === undefined || untilMs <= last.atMs) return [...pace];
  const doneMs = Math.max(plannedEndMs, last.atMs);
  if (doneMs < untilMs) return [...pace, { atMs: doneMs, share: 1 }, { atMs: untilMs, share: 1 }];
  return [...pace, { atMs: untilMs, share: crossingShare(last, doneMs, untilMs) }];
}

function crossingShare(last: PacePoint, doneMs: number, atMs: number): number {
  return last.share + (1 - last.share) * ((atMs - last.atMs) / (doneMs - last.atMs));
}
