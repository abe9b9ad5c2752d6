// Where a batch stands in its plan: the stages with their true beginnings and ends, from profile, closing, holds and moves.
// The plan knows nothing of readings; limits are made from it in corridor.ts.
import { type BatchTimes, type HealingClock, healingClock } from './healing-clock.ts';
import type { ProfileDocument, StageName } from './profile.ts';
import { type Border, placeBorders } from './stage-borders.ts';
import { type PacePoint, paceStage } from './stage-pace.ts';

export type { BatchTimes } from './healing-clock.ts';
export { clockHours, healingDay, instantOfClockHours } from './healing-clock.ts';
export { firstTimeOfDayAtOrAfter, validZone } from './time-of-day.ts';

/** One stage as it ran or is planned: from `startMs` up to, not including, `endMs`. */
export interface StageSpan {
  readonly stage: StageName;
  readonly startMs: number;
  /** null = open: the chamber is still being loaded. */
  readonly endMs: number | null;
  /** How far the stage had come, where holds or moves make that uneven; absent = evenly from start to end. */
  readonly pace?: readonly PacePoint[];
}

/**
 * The stages of a batch in order, without gap or overlap: `loading` from opening to closing (if the opening is known), `closed` from closing,
 * each later one when the clock shows its hours and then at its time of day, the last up to the end of the plan. Before closing there is
 * only loading. Holds shift what follows and nothing begins during one; a hold still open is taken to end at `asOfMs`.
 * A move begins its stage at its instant, and later stages keep their planned distance from it, on the clock. A finished batch ends there.
 * A stage without duration (skipped by a move) is left out.
 */
export function planStages(document: ProfileDocument, times: BatchTimes, asOfMs: number): StageSpan[] {
  const clock = healingClock(times, asOfMs);
  const cut = (spans: StageSpan[]) => spans.flatMap((span) => cutAtFinish(span, times.finishedMs));
  if (clock === null) return cut(loadingSpan(times));
  const spans = cut([
    ...loadingSpan(times),
    ...spansBetween(clock.closedMs, placeBorders(document, clock, times.moves)),
  ]);
  const isUneven = clock.held.length > 0 || times.moves.length > 0 || times.finishedMs !== null;
  return isUneven ? spans.map((span) => withPace(span, document, clock, times)) : spans;
}

/** The stage at an instant; null before the first and from the end of the last on. */
export function stageAt(spans: readonly StageSpan[], atMs: number): StageSpan | null {
  return spans.find(({ startMs, endMs }) => startMs <= atMs && (endMs === null || atMs < endMs)) ?? null;
}

function loadingSpan({ openedMs, closedMs }: BatchTimes): StageSpan[] {
  return openedMs === null ? [] : [{ stage: 'loading', startMs: openedMs, endMs: closedMs }];
}

function spansBetween(closedMs: number, borders: readonly Border[]): StageSpan[] {
  const starts: Border[] = [{ stage: 'closed', atMs: closedMs }, ...borders];
  return starts.flatMap(({ stage, atMs }, index) => {
    const endMs = starts[index + 1]?.atMs;
    return stage === 'end' || endMs === undefined ? [] : [{ stage, startMs: atMs, endMs }];
  });
}

function cutAtFinish(span: StageSpan, finishedMs: number | null): StageSpan[] {
  const endMs = Math.min(span.endMs ?? Infinity, finishedMs ?? Infinity);
  if (endMs <= span.startMs) return [];
  return [{ ...span, endMs: Number.isFinite(endMs) ? endMs : null }];
}

function withPace(span: StageSpan, document: ProfileDocument, clock: HealingClock, times: BatchTimes): StageSpan {
  const { stage, startMs, endMs } = span;
  if (stage === 'loading' || endMs === null) return span;
  const plannedEndMs = (beforeMs: number) => {
    const held = clock.held.filter(({ fromMs }) => fromMs < beforeMs);
    const moves = times.moves.filter(({ atMs }) => atMs < beforeMs);
    const borders = placeBorders(document, { ...clock, held }, moves);
    return borders[borders.findIndex((border) => border.stage === stage) + 1]?.atMs ?? endMs;
  };
  return { ...span, pace: paceStage({ startMs, endMs, held: clock.held, plannedEndMs }) };
}
