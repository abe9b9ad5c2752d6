// What a chamber's plan and log say at an instant, as the rules and the suppression ask for it.
import type { Scene } from '../../shared/alarms/rules/rule.ts';
import type { SceneCare, SceneReport } from '../../shared/alarms/rules/scene-care.ts';
import { suppressionAt } from '../../shared/alarms/suppression.ts';
import { stageAt } from '../../shared/healing/batch-clock.ts';
import type { LogRow } from '../store/store.ts';
import type { BatchPlan, HealingNow } from './watched-chamber.ts';

/** The part of a scene that comes from the batch. */
export function careOf(
  healing: HealingNow,
  plan: BatchPlan,
  nowMs: number,
): Required<Pick<Scene, 'care' | 'suppression'>> {
  const { batch, document } = healing;
  // A replay of the past must not know what people did later.
  const log = healing.log.filter(({ atMs }) => atMs <= nowMs);
  const answerOf = new Map(healing.answers.flatMap((one) => (one.atMs <= nowMs ? [[one.checkId, one]] : [])));
  const stage = stageAt(plan.spans, nowMs);
  const vpd = document.stages.find((one) => one.stage === stage?.stage)?.vpdKpa;
  const isOnHold = batch.holds.some(({ toMs }) => toMs === null);
  const ventingSinceMs = stage?.stage === 'venting' && !isOnHold ? stage.startMs : null;
  const care: SceneCare = {
    knownSinceMs: batch.enteredMs ?? batch.openedMs,
    checks: plan.checks.map((check) => ({ ...check, answer: answerOf.get(check.checkId) ?? null })),
    reports: log.flatMap(reportOf),
    vpd: vpd === undefined || stage === null ? null : { highKpa: vpd.high, sinceMs: stage.startMs },
    ventingSinceMs,
    isGapOpen: isGapOpen(log, ventingSinceMs ?? Infinity),
  };
  return { care, suppression: suppressionAt(log, nowMs) };
}

function isGapOpen(log: readonly LogRow[], sinceMs: number): boolean {
  const gaps = log.filter(({ gapPercent }) => gapPercent !== null);
  return (gaps.at(-1)?.gapPercent ?? 0) > 0 || gaps.some(({ atMs, gapPercent }) => atMs >= sinceMs && gapPercent !== 0);
}

const kinds: ReadonlySet<string> = new Set<SceneReport['kind']>(['erect', 'limp', 'film-wet', 'film-dry', 'mist']);

function reportOf({ kind, atMs }: LogRow): SceneReport[] {
  return isReportKind(kind) ? [{ kind, atMs }] : [];
}

function isReportKind(kind: string): kind is SceneReport['kind'] {
  return kinds.has(kind);
}
