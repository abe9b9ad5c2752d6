// A batch measured as it is stored: profile, stages, probes, and every figure that its readings give. The record, the exposure and the learning
// from batches all rest on this one.
import { type Batch, timesOf } from '../../shared/healing/batch.ts';
import { type BatchTimes, planStages } from '../../shared/healing/batch-clock.ts';
import { Problem } from '../../shared/problem.ts';
import type { ProfileVersion, Store } from '../store/store.ts';
import { stageParts } from './batch-parts.ts';
import { type BatchFigures, measureBatch } from './measure-batch.ts';
import { recordCorridor } from './record-corridor.ts';
import { findSources, type ProbeSource, type RecordWindow } from './record-sources.ts';

export interface MeasuredBatch {
  readonly profile: ProfileVersion;
  readonly times: BatchTimes;
  readonly window: RecordWindow;
  readonly sources: readonly ProbeSource[];
  readonly figures: BatchFigures;
}

/** Reads every reading of the batch once, up to its end or `nowMs`. Problem `not-found` when its profile is missing. */
export async function measureStored(
  store: Store,
  batch: Batch,
  { zone, nowMs }: { readonly zone: string; readonly nowMs: number },
): Promise<MeasuredBatch> {
  const profile = await store.profiles.get(batch.profileId, batch.profileVersion);
  if (profile === null) {
    throw new Problem('not-found', ({ problems }) =>
      problems.profileVersionMissing(batch.profileId, batch.profileVersion),
    );
  }
  const { document } = profile;
  const window = { fromMs: batch.openedMs, toMs: batch.finishedMs ?? Math.max(nowMs, batch.openedMs) };
  const times = timesOf(batch, zone);
  const sources = await findSources(store, batch, window);
  const corridorAt = await recordCorridor(store, { document, times, sources, window });
  const stages = stageParts(planStages(document, times, window.toMs), window);
  const figures = await measureBatch(store, { sources, window, closedMs: batch.closedMs, stages, corridorAt });
  return { profile, times, window, sources, figures };
}
