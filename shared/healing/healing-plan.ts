// A profile laid out in time for one closing: what `takewell plan` prints. Nothing has happened yet: no holds, no moves, no house air.
import { HOUR_MS, utcText } from '../units.ts';
import { type BatchTimes, planStages, type StageSpan } from './batch-clock.ts';
import { plannedChecks } from './checks.ts';
import { type Corridor, makeCorridor } from './corridor.ts';
import type { ProfileDocument, StageName } from './profile.ts';

/** Instants are RFC 3339 UTC; limits are °C and %RH, one row an hour from closing up to the end of the plan. */
export interface HealingPlan {
  readonly stages: readonly { readonly stage: StageName; readonly startsAt: string; readonly endsAt: string }[];
  /** `check` is the check's id in the profile; one that repeats has a row for each time. */
  readonly checks: readonly { readonly check: string; readonly dueAt: string }[];
  readonly limits: readonly PlannedLimits[];
}

export interface PlannedLimits {
  readonly at: string;
  readonly temperature: { readonly low: number; readonly high: number; readonly highHigh: number | null };
  readonly humidity: { readonly low: number; readonly high: number };
}

/**
 * The plan of a batch that is closed at `closedMs` in this zone and then goes undisturbed; limits at house level are the profile's fallback
 * numbers. Loading is not in it, since nothing says when it began.
 */
export function describePlan(
  document: ProfileDocument,
  { closedMs, zone }: { closedMs: number; zone: string },
): HealingPlan {
  const times: BatchTimes = { openedMs: null, closedMs, finishedMs: null, zone, holds: [], moves: [] };
  const spans = planStages(document, times, closedMs);
  return {
    stages: spans.map(({ stage, startMs, endMs }) => ({
      stage,
      startsAt: utcText(startMs),
      endsAt: utcText(endMs ?? startMs),
    })),
    checks: plannedChecks(document, times, closedMs).map(({ id, dueMs }) => ({ check: id, dueAt: utcText(dueMs) })),
    limits: hourlyLimits(document, spans),
  };
}

function hourlyLimits(document: ProfileDocument, spans: readonly StageSpan[]): PlannedLimits[] {
  const corridorAt = makeCorridor(document, spans, { temperature: null, humidity: null });
  const rows: PlannedLimits[] = [];
  let atMs = spans[0]?.startMs ?? 0;
  for (let limits = corridorAt(atMs); limits !== null; limits = corridorAt(atMs)) {
    rows.push(limitsRow(atMs, limits));
    atMs += HOUR_MS;
  }
  return rows;
}

function limitsRow(atMs: number, { temperature, humidity }: Corridor): PlannedLimits {
  return {
    at: utcText(atMs),
    temperature: {
      low: rounded(temperature.low),
      high: rounded(temperature.high),
      highHigh: temperature.highHigh === null ? null : rounded(temperature.highHigh),
    },
    humidity: { low: rounded(humidity.low), high: rounded(humidity.high) },
  };
}

/** To a hundredth: finer than any sensor, and free of the dust of binary fractions. */
function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
