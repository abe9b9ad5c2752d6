// Grace: a limit may loosen at once but tightens no faster than a rate, so that crossing a border never makes an alarm by itself.
import { HOUR_MS } from '../units.ts';
import { type Piece, valueOfPiece } from './limit-course.ts';

/** A limit over time. */
export interface LimitCourse {
  /** Its value, or null where it is not set. */
  readonly valueAt: (atMs: number) => number | null;
  /** Up to this instant, itself not included, the value stays what it is at `atMs`; `atMs` itself where it is on the move. */
  readonly steadyUntilMs: (atMs: number) => number;
}

interface CarriedPiece extends Piece {
  /** The tightest the grace allows at `fromMs`, from everything before and the piece's own start. */
  readonly slackAtStart: number;
}

/**
 * A high limit with grace: effective(t) = the highest over all s ≤ t of raw(s) − rate·(t − s). A low limit is the mirror image.
 * Exact: raw is straight between the ends of its pieces, so that the highest lies at such an end or at t itself.
 * What follows from it: it never tightens faster than `ratePerHour`, it is never tighter than raw, and it jumps only where raw loosens.
 * Pieces must be in order of time; a jump of raw belongs to the later piece.
 */
export function slowTightening(pieces: readonly Piece[], side: 'low' | 'high', ratePerHour: number): LimitCourse {
  const sign = side === 'high' ? 1 : -1;
  const ratePerMs = ratePerHour / HOUR_MS;
  const carried = carrySlack(
    pieces.map((piece) => signed(piece, sign)),
    ratePerMs,
  );
  const slackAt = (piece: CarriedPiece, atMs: number) => piece.slackAtStart - ratePerMs * (atMs - piece.fromMs);
  return {
    valueAt(atMs) {
      const piece = carried[startedBy(carried, atMs) - 1];
      if (piece === undefined || atMs >= piece.toMs) return null;
      return sign * Math.max(valueOfPiece(piece, atMs), slackAt(piece, atMs));
    },
    steadyUntilMs(atMs) {
      const started = startedBy(carried, atMs);
      const piece = carried[started - 1];
      if (piece === undefined || atMs >= piece.toMs) return carried[started]?.fromMs ?? Infinity;
      const isLevel = piece.fromValue === piece.toValue && slackAt(piece, atMs) <= piece.fromValue;
      return isLevel ? piece.toMs : atMs;
    },
  };
}

function signed(piece: Piece, sign: number): Piece {
  return { ...piece, fromValue: sign * piece.fromValue, toValue: sign * piece.toValue };
}

function carrySlack(pieces: readonly Piece[], ratePerMs: number): CarriedPiece[] {
  let leftMs = -Infinity;
  let left = -Infinity;
  return pieces.map((piece) => {
    const slackAtStart = Math.max(
      piece.fromValue,
      left === -Infinity ? left : left - ratePerMs * (piece.fromMs - leftMs),
    );
    left = Math.max(piece.toValue, slackAtStart - ratePerMs * (piece.toMs - piece.fromMs));
    leftMs = piece.toMs;
    return { ...piece, slackAtStart };
  });
}

/** How many pieces have started by then. */
function startedBy(pieces: readonly CarriedPiece[], atMs: number): number {
  let low = 0;
  let high = pieces.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((pieces[middle]?.fromMs ?? Infinity) <= atMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
