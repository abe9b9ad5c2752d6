// The batch itself, its profile and its plan, as they stand in a record.
import type { BatchRecord } from '../../shared/api/record.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import { type BatchTimes, planStages, type StageSpan } from '../../shared/healing/batch-clock.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { utcText } from '../../shared/units.ts';
import type { Chamber } from '../store/store.ts';
import { utcTextOrNull } from './describe-alarms.ts';

/** A chamber that was taken down since still has the records of its batches: its id stands for its name. */
export function describeBatch(batch: Batch, chambers: readonly Chamber[]): BatchRecord['batch'] {
  const { id, code, chamberId, scion, rootstock, method, trays, plants, takenPlants } = batch;
  const chamber = chambers.find((one) => one.id === chamberId);
  return {
    id,
    code,
    chamberId,
    chamberName: chamber?.name ?? chamberId,
    scion,
    rootstock,
    method,
    trays,
    plants,
    openedAt: utcText(batch.openedMs),
    closedAt: utcTextOrNull(batch.closedMs),
    finishedAt: utcTextOrNull(batch.finishedMs),
    takenPlants,
    take: takenPlants === null || plants === 0 ? null : Number((takenPlants / plants).toFixed(6)),
  };
}

/** The plan as made at closing, and as it went; `asOfMs` is the end of the record. */
export function describePlan(document: ProfileDocument, batch: Batch, times: BatchTimes, asOfMs: number) {
  const undisturbed: BatchTimes = { ...times, finishedMs: null, holds: [], moves: [] };
  return {
    stages: {
      planned: planStages(document, undisturbed, asOfMs).map(describeStage),
      actual: planStages(document, times, asOfMs).map(describeStage),
    },
    holds: batch.holds.map((hold) => ({ from: utcText(hold.fromMs), to: utcTextOrNull(hold.toMs) })),
    moves: batch.moves.map(({ stage, atMs }) => ({ stage, at: utcText(atMs) })),
  };
}

function describeStage({ stage, startMs, endMs }: StageSpan): BatchRecord['stages']['planned'][number] {
  return { stage, startsAt: utcText(startMs), endsAt: utcTextOrNull(endMs) };
}
