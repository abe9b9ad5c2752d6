// The instants at which the stages after `closed` begin and the plan ends, from profile, clock and the manager's moves.
import { HOUR_MS } from '../units.ts';
import { clockMsAt, firstFreeInstant, type HealingClock, instantOfClockMs } from './healing-clock.ts';
import type { ProfileDocument, StageName } from './profile.ts';

interface StageMove {
  readonly stage: StageName;
  readonly atMs: number;
}

/** The start of a stage, or the end of the plan. */
export interface Border {
  readonly stage: StageName | 'end';
  readonly atMs: number;
}

interface PlannedBorder {
  readonly stage: Border['stage'];
  readonly afterHours: number;
  readonly notBefore: string | undefined;
}

interface Row extends PlannedBorder {
  /** Planned with the holds, without moves. */
  readonly plannedMs: number;
  /** Planned without holds and moves: what distances are measured on. */
  readonly undisturbedMs: number;
  readonly movedMs: number | null;
}

/**
 * The borders in stage order, never running backwards. A stage begins when the clock shows its hours and then at its time of day, never
 * during a hold. A move begins its stage at once; what follows keeps its undisturbed distance from it, on the clock. A move to a stage
 * skips the stages before it that had not begun; a move back to an earlier stage takes the moves to later ones away.
 */
export function placeBorders(document: ProfileDocument, clock: HealingClock, moves: readonly StageMove[]): Border[] {
  const borders: Border[] = [];
  let anchor: Anchor | null = null;
  let earliestMs = clock.closedMs;
  const rows = layRows(document, clock, moves);
  for (const [index, row] of rows.entries()) {
    if (row.movedMs !== null) anchor = { movedMs: row.movedMs, undisturbedMs: row.undisturbedMs };
    // A move to a later stage skips this one if it had not begun.
    const latestMs = rows.slice(index).find((later) => later.movedMs !== null)?.movedMs ?? Infinity;
    earliestMs = Math.max(earliestMs, Math.min(startOfRow(row, anchor, clock), latestMs));
    borders.push({ stage: row.stage, atMs: earliestMs });
  }
  return borders;
}

/** The last move so far: what follows is measured from it. */
type Anchor = { readonly movedMs: number; readonly undisturbedMs: number };

function startOfRow(row: Row, anchor: Anchor | null, clock: HealingClock): number {
  if (row.movedMs !== null) return row.movedMs;
  if (anchor === null) return row.plannedMs;
  const distanceMs = row.undisturbedMs - anchor.undisturbedMs;
  return firstFreeInstant(clock, instantOfClockMs(clock, clockMsAt(clock, anchor.movedMs) + distanceMs), undefined);
}

function layRows(document: ProfileDocument, clock: HealingClock, moves: readonly StageMove[]): Row[] {
  const borders = plannedBorders(document);
  const standing = standingMoves(borders, clock.closedMs, moves);
  const planned = planWithoutMoves(borders, clock);
  // Distances matter only after a move, and looking up times of day is the costly part.
  const undisturbed = standing.size === 0 ? planned : planWithoutMoves(borders, { ...clock, held: [] });
  return borders.map((border, index) => ({
    ...border,
    plannedMs: planned[index] ?? clock.closedMs,
    undisturbedMs: undisturbed[index] ?? clock.closedMs,
    movedMs: standing.get(border.stage) ?? null,
  }));
}

function plannedBorders(document: ProfileDocument): PlannedBorder[] {
  const later = document.stages.filter(({ stage }) => stage !== 'loading' && stage !== 'closed');
  return [
    ...later.map(({ stage, afterHours, notBefore }) => ({ stage, afterHours, notBefore })),
    { stage: 'end', afterHours: document.endsAfterHours, notBefore: document.endsNotBefore },
  ];
}

function planWithoutMoves(borders: readonly PlannedBorder[], clock: HealingClock): number[] {
  let earliestMs = clock.closedMs;
  return borders.map(({ afterHours, notBefore }) => {
    const dueMs = instantOfClockMs(clock, afterHours * HOUR_MS);
    earliestMs = Math.max(earliestMs, firstFreeInstant(clock, dueMs, notBefore));
    return earliestMs;
  });
}

/** The moves that still hold, by stage, so that their times rise with the order of the stages. */
function standingMoves(
  borders: readonly PlannedBorder[],
  closedMs: number,
  moves: readonly StageMove[],
): Map<string, number> {
  const order = borders.map(({ stage }) => stage);
  const standing = new Map<string, number>();
  for (const move of [...moves].sort((a, b) => a.atMs - b.atMs)) {
    const place = order.indexOf(move.stage);
    if (place < 0 || move.atMs < closedMs) continue;
    for (const later of order.slice(place)) standing.delete(later);
    standing.set(move.stage, move.atMs);
  }
  return standing;
}
