// One chamber as the watch holds it in memory: its batch, plan, limits and alarms, rebuilt from the store whenever one of them is changed.
import type { ChamberWatch } from '../../shared/alarms/watch-state.ts';
import { type Batch, timesOf } from '../../shared/healing/batch.ts';
import { planStages, type StageSpan } from '../../shared/healing/batch-clock.ts';
import { type PlannedCheck, plannedChecks } from '../../shared/healing/checks.ts';
import { type Corridor, type HouseAir, makeCorridor } from '../../shared/healing/corridor.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import type { Chamber, CheckAnswer, LogRow, Store } from '../store/store.ts';
import type { Trends } from './trends.ts';

export interface HealingNow {
  readonly batch: Batch;
  readonly document: ProfileDocument;
  readonly answers: readonly CheckAnswer[];
  /** Newest logged gap, %; null = nothing logged. */
  readonly gapPercent: number | null;
  /** In order of time. */
  readonly log: readonly LogRow[];
}

export interface WatchedChamber {
  readonly chamber: Chamber;
  readonly healing: HealingNow | null;
  readonly watch: ChamberWatch;
  readonly trends: Trends;
}

/** Reads the open batch of a chamber with all that its plan needs. */
export async function loadHealing(store: Store, batch: Batch): Promise<HealingNow> {
  const profile = await store.profiles.get(batch.profileId, batch.profileVersion);
  if (profile === null) throw new Error(`batch ${batch.id} has pinned a profile version that is not stored`);
  const log = await store.batches.log(batch.id);
  const gaps = log.flatMap((row) => row.gapPercent ?? []);
  const answers = await store.batches.answers(batch.id);
  return { batch, document: profile.document, answers, gapPercent: gaps.at(-1) ?? null, log };
}

/** The plan of a batch: its stages, checks and limits, with the holds and moves known so far. */
export interface BatchPlan {
  readonly spans: readonly StageSpan[];
  readonly checks: readonly PlannedCheck[];
  readonly corridorAt: (atMs: number) => Corridor | null;
}

/** Works the plan out. `asOfMs` counts only while a hold is open or the chamber is being loaded. */
export function planBatch({ batch, document }: HealingNow, zone: string, house: HouseAir, asOfMs: number): BatchPlan {
  const times = timesOf(batch, zone);
  const spans = planStages(document, times, asOfMs);
  const corridorAt = keepLastLimits(makeCorridor(document, spans, house), batch, spans.at(-1)?.endMs ?? null);
  return { spans, checks: plannedChecks(document, times, asOfMs), corridorAt };
}

// A batch that nobody has finished is still in the tent: past the end of its plan it is watched by the limits of the last hour.
function keepLastLimits(
  corridorAt: BatchPlan['corridorAt'],
  batch: Batch,
  endMs: number | null,
): BatchPlan['corridorAt'] {
  if (batch.finishedMs !== null || endMs === null) return corridorAt;
  return (atMs) => corridorAt(Math.min(atMs, endMs - 1));
}

interface Planned {
  readonly plan: BatchPlan;
  readonly zone: string;
  readonly house: HouseAir;
  readonly asOfMs: number;
}

/** Keeps plans, since every reading asks for one and they change only with the batch, the zone, the house's mean, or during a hold. */
export function createPlanCache() {
  const plans = new WeakMap<HealingNow, Planned>();
  return (healing: HealingNow, zone: string, house: HouseAir, nowMs: number): BatchPlan => {
    const known = plans.get(healing);
    const isSame = known !== undefined && known.zone === zone && known.house === house;
    if (isSame && (!isOpenEnded(healing.batch) || Math.abs(nowMs - known.asOfMs) < MINUTE_MS)) return known.plan;
    const plan = planBatch(healing, zone, house, nowMs);
    plans.set(healing, { plan, zone, house, asOfMs: nowMs });
    return plan;
  };
}

function isOpenEnded({ closedMs, holds }: Batch): boolean {
  return closedMs === null || holds.some(({ toMs }) => toMs === null);
}
