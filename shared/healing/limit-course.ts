// One limit over one stage as straight pieces: constants, ramps, stairs and levels all become the same thing. Grace is not its business.
import type { StageSpan } from './batch-clock.ts';
import type { Limit, LimitEnd } from './profile.ts';
import { instantOfShare, type PacePoint } from './stage-pace.ts';

/** A straight line from `fromMs` up to, not including, `toMs` (`Infinity` = open, then level). Pieces of a course follow each other in time. */
export interface Piece {
  readonly fromMs: number;
  readonly toMs: number;
  readonly fromValue: number;
  readonly toValue: number;
}

/** Gives the number for the end of a limit: the number itself, or what the house air makes of it. */
export type ResolveEnd = (end: LimitEnd) => number;

/**
 * The course of a limit over a stage. Ramps run from `from` to `to` with the pace of the stage; step i of n stairs (from 0) stands at
 * from + (to − from)·(i + 1)/n, so that the first comes with the stage and the last is `to`; levels share the stage equally.
 * While a stage is open nothing moves: ramps and stairs stand at `from`, levels at their first value.
 */
export function limitPieces(limit: Limit, span: StageSpan, resolve: ResolveEnd): Piece[] {
  const { startMs, endMs } = span;
  if (endMs === null) return openValues(limit, resolve).map((value) => levelPiece(startMs, Infinity, value));
  const pace = span.pace ?? [
    { atMs: startMs, share: 0 },
    { atMs: endMs, share: 1 },
  ];
  if (limit.shape === 'constant') return [levelPiece(startMs, endMs, limit.value)];
  if (limit.shape === 'ramp') return rampPieces(limit.from, resolve(limit.to), pace);
  return levelPieces(levelsOf(limit, resolve), pace, endMs);
}

/** The value of a piece at an instant within it, its end included (there: the value just before the next piece). */
export function valueOfPiece(piece: Piece, atMs: number): number {
  if (piece.fromValue === piece.toValue) return piece.fromValue;
  const share = (atMs - piece.fromMs) / (piece.toMs - piece.fromMs);
  return piece.fromValue + (piece.toValue - piece.fromValue) * share;
}

/** The one value of a limit while its stage is open. */
function openValues(limit: Limit, resolve: ResolveEnd): number[] {
  if (limit.shape === 'constant') return [limit.value];
  return limit.shape === 'levels' ? limit.values.slice(0, 1).map(resolve) : [limit.from];
}

function levelsOf(limit: Extract<Limit, { shape: 'stairs' | 'levels' }>, resolve: ResolveEnd): number[] {
  if (limit.shape === 'levels') return limit.values.map(resolve);
  const { from, steps } = limit;
  const to = resolve(limit.to);
  return Array.from({ length: steps }, (_, i) => (i + 1 === steps ? to : from + ((to - from) * (i + 1)) / steps));
}

function levelPieces(levels: readonly number[], pace: readonly PacePoint[], endMs: number): Piece[] {
  const starts = levels.map((_, i) => instantOfShare(pace, i / levels.length));
  return levels.flatMap((level, i) => {
    const fromMs = starts[i] ?? endMs;
    const toMs = starts[i + 1] ?? endMs;
    return fromMs < toMs ? [levelPiece(fromMs, toMs, level)] : [];
  });
}

function rampPieces(from: number, to: number, pace: readonly PacePoint[]): Piece[] {
  const valueAt = (point: PacePoint) => from + (to - from) * point.share;
  return pace.slice(1).flatMap((point, i) => {
    const before = pace[i];
    if (before === undefined || before.atMs >= point.atMs) return [];
    return [{ fromMs: before.atMs, toMs: point.atMs, fromValue: valueAt(before), toValue: valueAt(point) }];
  });
}

function levelPiece(fromMs: number, toMs: number, value: number): Piece {
  return { fromMs, toMs, fromValue: value, toValue: value };
}
