// What plan and log of a stored batch said at each instant of its replay, worked out only when something of it changes.
import type { PlannedCheck } from '../../shared/healing/checks.ts';
import type { Care } from '../../shared/replay/replay-setup.ts';
import { careOf } from '../watch/scene-care.ts';
import type { BatchPlan, HealingNow } from '../watch/watched-chamber.ts';

/** Ask in order of time. The same object until the next entry, answer, stage, due check or end of a disturbance. */
export function createBatchCare(healing: HealingNow, plan: BatchPlan): (atMs: number) => Care {
  const changesMs = changesOf(healing, plan);
  let care: Care = {};
  let untilMs = Number.NEGATIVE_INFINITY;
  return (atMs) => {
    if (atMs < untilMs) return care;
    care = careOf(healing, plan, atMs);
    const endMs = care.suppression?.untilMs ?? Infinity;
    untilMs = Math.min(endMs > atMs ? endMs : Infinity, changesMs.find((ms) => ms > atMs) ?? Infinity);
    return care;
  };
}

function changesOf({ log, answers }: HealingNow, { spans, checks }: BatchPlan): number[] {
  const instants = [
    ...log.map(({ atMs }) => atMs),
    ...answers.map(({ atMs }) => atMs),
    ...spans.flatMap(({ startMs, endMs }) => (endMs === null ? [startMs] : [startMs, endMs])),
    ...checks.flatMap(({ dueMs, overdueMs }: PlannedCheck) => [dueMs, overdueMs]),
  ];
  return [...new Set(instants)].sort((a, b) => a - b);
}
