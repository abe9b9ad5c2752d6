// The climate record of a batch, put together from the store: everything but the readings themselves, which are streamed beside it.
// It reads only; what is bad or missing is said, never smoothed over.
import type { BatchRecord } from '../../shared/api/record.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import type { BatchTimes } from '../../shared/healing/batch-clock.ts';
import { plannedChecks } from '../../shared/healing/checks.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { Problem } from '../../shared/problem.ts';
import { utcText } from '../../shared/units.ts';
import type { Store } from '../store/store.ts';
import { airTallyRule } from './air-tally.ts';
import { calibrationRule } from './calibration-rule.ts';
import { chamberSeriesRule } from './chamber-series.ts';
import { sumCounts } from './count-quality.ts';
import { describeAlarms } from './describe-alarms.ts';
import { describeBatch, describePlan } from './describe-batch.ts';
import { describeChecks } from './describe-checks.ts';
import {
  describeDay,
  describeExcursion,
  describeFilm,
  describePart,
  describeStage,
  figureRules,
} from './describe-figures.ts';
import { describeLogLine } from './describe-log.ts';
import { describeGaps, describeProbe } from './describe-probes.ts';
import type { BatchFigures } from './measure-batch.ts';
import { measureStored } from './measure-stored.ts';
import { corridorRule } from './record-corridor.ts';
import { labelOf, type ProbeSource, type RecordWindow } from './record-sources.ts';

export interface RecordSite {
  readonly siteName: string;
  /** IANA time zone. */
  readonly zone: string;
  readonly altitudeM: number;
}

export interface RecordRequest extends RecordSite {
  /** When the record is made; an unfinished batch is recorded up to here. */
  readonly nowMs: number;
  /** Version of the program. */
  readonly version: string;
}

export interface GatheredRecord {
  readonly record: BatchRecord;
  /** Where the readings come from; `sources[i]` is `record.probes[i]`. */
  readonly sources: readonly ProbeSource[];
}

/** Gathers the record of a batch, finished or not. Problem `not-found` for an unknown batch; the store's Problems. */
export async function gatherRecord(store: Store, batchId: string, request: RecordRequest): Promise<GatheredRecord> {
  const batch = await store.batches.get(batchId);
  if (batch === null) throw new Problem('not-found', ({ problems }) => problems.noBatchOf(batchId));
  const { profile, times, window, sources, figures } = await measureStored(store, batch, request);
  const record: BatchRecord = {
    format: 'takewell-batch-record',
    formatVersion: 1,
    madeAt: utcText(request.nowMs),
    version: request.version,
    site: { name: request.siteName, zone: request.zone, altitudeM: request.altitudeM },
    computation: [calibrationRule, chamberSeriesRule, ...figureRules, corridorRule, airTallyRule],
    batch: describeBatch(batch, await store.chambers.listWithRetired()),
    profile: { id: profile.id, version: profile.version, document: profile.document },
    ...describePlan(profile.document, batch, times, window.toMs),
    ...describeMeasured(sources, figures),
    ...(await describeEvents(store, batch, profile.document, times, window)),
  };
  return { record, sources };
}

function describeMeasured(
  sources: readonly ProbeSource[],
  { sources: figures, days, stages, whole, excursions, film }: BatchFigures,
) {
  const pairs = sources.flatMap((source, index) => {
    const own = figures[index];
    return own === undefined ? [] : [{ source, own }];
  });
  return {
    probes: pairs.map(({ source, own }) => describeProbe(source, own)),
    quality: sumCounts(pairs.flatMap(({ own }) => [own.quality.temperature, own.quality.humidity])),
    days: days.map(describeDay),
    stageFigures: stages.map(describeStage),
    whole: whole === null ? null : describePart(whole),
    film: describeFilm(film),
    excursions: excursions.map(describeExcursion),
    gaps: pairs
      .flatMap(({ source, own }) => describeGaps(source, own))
      .sort((a, b) => Date.parse(a.from) - Date.parse(b.from)),
  };
}

async function describeEvents(
  store: Store,
  batch: Batch,
  document: ProfileDocument,
  times: BatchTimes,
  { toMs }: RecordWindow,
) {
  const probes = await store.probes.list();
  const nameProbe = (id: string) => {
    const probe = probes.find((one) => one.id === id);
    return probe === undefined ? id : labelOf(probe, probes);
  };
  const log = await store.batches.log(batch.id);
  return {
    alarms: await describeAlarms(store, batch.id, nameProbe),
    checks: describeChecks(plannedChecks(document, times, toMs), await store.batches.answers(batch.id), toMs),
    log: log.map((line) => describeLogLine(line, document)),
  };
}
