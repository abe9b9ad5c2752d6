// A batch and its checks as they are sent to people.
import type { BatchView, CheckView } from '../../shared/api/batches.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import { checkStatus } from '../../shared/healing/checks.ts';
import { utcText } from '../../shared/units.ts';
import type { Store } from '../store/store.ts';
import type { Watch } from '../watch/watch.ts';
import { loadHealing, planBatch } from '../watch/watched-chamber.ts';
import { timeText } from './alarm-view.ts';
import { briefBatch } from './chamber-view.ts';
import { viewLogEntry } from './log-view.ts';

interface ViewParts {
  readonly store: Store;
  readonly watch: Watch;
  readonly zone: string;
  readonly nowMs: number;
}

export async function viewBatch(batch: Batch, { store, watch, zone, nowMs }: ViewParts): Promise<BatchView> {
  const healing = await loadHealing(store, batch);
  const plan = planBatch(healing, zone, watch.house(), batch.finishedMs ?? nowMs);
  const log = await store.batches.log(batch.id);
  return {
    ...briefBatch(healing, plan, nowMs),
    chamberId: batch.chamberId,
    chamberName: watch.chamberName(batch.chamberId),
    profileId: batch.profileId,
    profileVersion: batch.profileVersion,
    profileName: healing.document.name,
    method: batch.method,
    finishedAt: timeText(batch.finishedMs),
    takenPlants: batch.takenPlants,
    stages: plan.spans.map(({ stage, startMs, endMs }) => ({
      stage,
      startsAt: utcText(startMs),
      endsAt: timeText(endMs),
    })),
    log: log.map((row) => viewLogEntry(row, healing.document)),
  };
}

export async function viewChecks(batch: Batch, { store, watch, zone, nowMs }: ViewParts): Promise<CheckView[]> {
  const healing = await loadHealing(store, batch);
  const plan = planBatch(healing, zone, watch.house(), batch.finishedMs ?? nowMs);
  return plan.checks.map((check) => {
    const answer = healing.answers.find(({ checkId }) => checkId === check.checkId) ?? null;
    return {
      checkId: check.checkId,
      question: check.question,
      ifNo: check.ifNo,
      dueAt: utcText(check.dueMs),
      status: checkStatus(check, answer, batch.finishedMs ?? nowMs),
      answer: answer?.answer ?? null,
      answeredAt: timeText(answer?.atMs ?? null),
      answeredBy: answer?.person ?? null,
      note: answer?.note ?? '',
    };
  });
}
