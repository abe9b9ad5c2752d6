// The replay of a stored batch: the readings of all its probes, with its holds and moves and the house air of the time.
import type { Rule } from '../../shared/alarms/rules/rule.ts';
import { type Batch, timesOf } from '../../shared/healing/batch.ts';
import { planStages } from '../../shared/healing/batch-clock.ts';
import { plannedChecks } from '../../shared/healing/checks.ts';
import type { Profile } from '../../shared/healing/profile.ts';
import { Problem } from '../../shared/problem.ts';
import { Replay } from '../../shared/replay/replay.ts';
import type { ReplayResult } from '../../shared/replay/replay-result.ts';
import { mergeReadings } from '../record/merge-readings.ts';
import { recordCorridor } from '../record/record-corridor.ts';
import { findSources, type ProbeSource, type RecordWindow } from '../record/record-sources.ts';
import { openSite } from '../site.ts';
import type { Store } from '../store/store.ts';
import { type BatchPlan, loadHealing } from '../watch/watched-chamber.ts';
import { createBatchCare } from './batch-care.ts';
import { BatchDays } from './batch-days.ts';
import type { Terminal } from './command.ts';
import { findProfile } from './find-profiles.ts';
import { fileOf, noDatabase, readStored } from './open-stored.ts';
import { misuse } from './parse-options.ts';
import { createProgress, type Progress } from './progress.ts';

interface BatchRequest {
  readonly batchId: string;
  /** null = the version that the batch has pinned. */
  readonly profileId: string | null;
  /** null = each probe's own. */
  readonly silenceMs: number | null;
  /** Those of the live watch when not given. */
  readonly rules?: readonly Rule[];
}

interface ReplayedBatch {
  readonly result: ReplayResult;
  readonly what: string;
  readonly zone: string;
}

/** Problem `not-found` without a database, `bad-input` for a batch or profile there is not. */
export async function replayBatch(request: BatchRequest, terminal: Terminal): Promise<ReplayedBatch> {
  const other = request.profileId === null ? null : await findProfile(request.profileId, terminal);
  const done = await readStored(terminal, async (store) => {
    const batch = await store.batches.get(request.batchId);
    if (batch === null) throw misuse(`There is no batch ${request.batchId}.`);
    const profile = other ?? (await pinnedProfile(store, batch));
    const { zone } = (await openSite(store)).current();
    const result = await run(store, { batch, profile, zone, request, terminal });
    return {
      result,
      what: `Batch ${batch.code} through ${profile.document.name} (${profile.id}). Times in ${zone}.`,
      zone,
    };
  });
  if (done === null) throw noDatabase(fileOf(terminal));
  return done;
}

async function pinnedProfile(store: Store, { profileId, profileVersion }: Batch): Promise<Profile> {
  const profile = await store.profiles.get(profileId, profileVersion);
  if (profile === null)
    throw Problem.forOperator(
      'not-found',
      `The profile ${profileId} version ${profileVersion} of this batch is missing.`,
    );
  return profile;
}

interface Work {
  readonly batch: Batch;
  readonly profile: Profile;
  readonly zone: string;
  readonly request: BatchRequest;
  readonly terminal: Terminal;
}

async function run(store: Store, work: Work): Promise<ReplayResult> {
  const { batch, request, terminal } = work;
  const window = { fromMs: batch.openedMs, toMs: batch.finishedMs ?? Math.max(terminal.nowMs, batch.openedMs) };
  const all = await findSources(store, batch, window);
  const sources = all.filter(({ place }) => place !== 'house');
  if (!sources.some(({ place }) => place === 'canopy'))
    throw misuse(`No canopy probe stood with batch ${batch.code}: there is nothing to replay.`);
  const plan = await planOf(store, work, all, window);
  const silenceOf = (source: ProbeSource) => request.silenceMs ?? source.silenceMs;
  const replay = new Replay({
    probes: sources.map((source) => ({
      probeId: source.id,
      place: source.place === 'film' ? 'film' : 'canopy',
      silenceMs: silenceOf(source),
      fromMs: source.fromMs,
      toMs: source.placedToMs,
    })),
    corridorAt: plan.corridorAt,
    careAt: createBatchCare({ ...(await loadHealing(store, batch)), document: work.profile.document }, plan),
    batch: { fromMs: batch.openedMs, toMs: batch.finishedMs },
    ...(request.rules !== undefined && { rules: request.rules }),
  });
  const days = new BatchDays(batch, sources, silenceOf);
  const progress = createProgress(terminal, 'replay', window.toMs - window.fromMs);
  try {
    await feed(store, sources, { replay, days, progress, fromMs: window.fromMs });
  } finally {
    progress.end();
  }
  return replay.end(() => days.result());
}

interface Feeding {
  readonly replay: Replay;
  readonly days: BatchDays;
  readonly progress: Progress;
  readonly fromMs: number;
}

async function feed(
  store: Store,
  sources: readonly ProbeSource[],
  { replay, days, progress, fromMs }: Feeding,
): Promise<void> {
  const numbers = new Map(sources.map((source, number) => [source, number]));
  for await (const block of mergeReadings(store, sources)) {
    for (const { source, raw, reading } of block) {
      replay.hear(numbers.get(source) ?? 0, raw, reading);
      days.add(source, reading);
    }
    progress.at((block.at(-1)?.reading.timeMs ?? fromMs) - fromMs);
  }
}

/** The plan as it went; while nobody has finished the batch, the limits of its last instant go on. */
async function planOf(
  store: Store,
  { batch, profile: { document }, zone }: Work,
  sources: readonly ProbeSource[],
  window: RecordWindow,
): Promise<BatchPlan> {
  const times = timesOf(batch, zone);
  const spans = planStages(document, times, window.toMs);
  const checks = plannedChecks(document, times, window.toMs);
  const corridorAt = await recordCorridor(store, { document, times, sources, window });
  const endMs = spans.at(-1)?.endMs ?? null;
  if (batch.finishedMs !== null || endMs === null) return { spans, checks, corridorAt };
  return { spans, checks, corridorAt: (atMs) => corridorAt(Math.min(atMs, endMs - 1)) };
}
