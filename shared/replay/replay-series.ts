// One series of one probe through a profile: the replay of a file.
import type { Rule } from '../alarms/rules/rule.ts';
import { createDailyExposure } from '../exposure/daily-exposure.ts';
import type { ClimateSample } from '../exposure/day-figures.ts';
import { type BatchTimes, planStages, type StageSpan, stageAt } from '../healing/batch-clock.ts';
import { type Corridor, makeCorridor } from '../healing/corridor.ts';
import type { ProfileDocument } from '../healing/profile.ts';
import type { HeatForecaster } from './heat-forecaster.ts';
import { trustedPart } from './judged-probe.ts';
import { Replay } from './replay.ts';
import type { ReplayResult } from './replay-result.ts';
import type { Care } from './replay-setup.ts';

export interface SeriesSetup {
  readonly document: ProfileDocument;
  readonly closedMs: number;
  /** The site's IANA time zone. */
  readonly zone: string;
  /** Longest gap between two readings that is still joined, and longest silence that is no alarm, ms. */
  readonly silenceMs: number;
  /** Those of the live watch when not given. */
  readonly rules?: readonly Rule[];
  /** Foresees heat; that of the live watch when not given. */
  readonly forecaster?: HeatForecaster;
  /** How often the watch looks when nothing is heard, ms; as often as the live one when not given. */
  readonly tickMs?: number;
}

export interface SeriesReplay {
  /** Takes the next sample in order of time. */
  add(sample: ClimateSample): void;
  /** Counts a row in which nothing could be read. */
  miss(): void;
  result(): ReplayResult;
}

/** Starts the replay of a batch that went undisturbed, with the numbers the profile falls back on for house air. */
export function createSeriesReplay({ document, closedMs, zone, silenceMs, ...rest }: SeriesSetup): SeriesReplay {
  const times: BatchTimes = { openedMs: null, closedMs, finishedMs: null, zone, holds: [], moves: [] };
  const spans = planStages(document, times, closedMs);
  const days = createDailyExposure({ closedMs, silenceMs });
  let replay: Replay | null = null;
  const start = (firstMs: number) =>
    new Replay({
      probes: [{ probeId: 'probe', place: 'canopy', silenceMs, fromMs: firstMs, toMs: Number.POSITIVE_INFINITY }],
      corridorAt: corridorOf(document, spans),
      careAt: careOf(document, spans),
      batch: { fromMs: closedMs, toMs: null },
      ...rest,
      settled: (_, sample) => days.add(trustedPart(sample)),
    });
  let missed = 0;
  return {
    add(sample) {
      replay ??= start(sample.timeMs);
      replay.hear(0, sample);
    },
    miss() {
      missed += 1;
    },
    result() {
      const ended = (replay ?? start(closedMs)).end(() => days.result());
      return { ...ended, quality: { ...ended.quality, missing: ended.quality.missing + missed } };
    },
  };
}

/** Nobody has finished the batch: past the end of its plan the limits of the last instant hold, as in the live watch. */
function corridorOf(document: ProfileDocument, spans: readonly StageSpan[]): (atMs: number) => Corridor | null {
  const corridorAt = makeCorridor(document, spans, { temperature: null, humidity: null });
  const endMs = spans.at(-1)?.endMs ?? null;
  return endMs === null ? corridorAt : (atMs) => corridorAt(Math.min(atMs, endMs - 1));
}

/** What the plan alone says: a file knows no log, so no check is due and no gap is known to be open. */
function careOf(document: ProfileDocument, spans: readonly StageSpan[]): (atMs: number) => Care {
  const ofStage = new Map(spans.map((span) => [span, stageCare(document, span)]));
  return (atMs) => {
    const span = stageAt(spans, atMs);
    return (span === null ? undefined : ofStage.get(span)) ?? nothingKnown;
  };
}

const unknownCare = { knownSinceMs: 0, checks: [], reports: [], vpd: null, ventingSinceMs: null, isGapOpen: false };
const nothingKnown: Care = { care: unknownCare };

function stageCare(document: ProfileDocument, { stage, startMs }: StageSpan): Care {
  const bound = document.stages.find((one) => one.stage === stage)?.vpdKpa;
  const vpd = bound === undefined ? null : { highKpa: bound.high, sinceMs: startMs };
  return { care: { ...unknownCare, vpd, ventingSinceMs: stage === 'venting' ? startMs : null } };
}
