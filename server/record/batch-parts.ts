// The parts of a batch that its record tells figures of: healing days, stages as they went, and the whole time since closing.
import type { Part } from '../../shared/exposure/part-exposure.ts';
import type { StageSpan } from '../../shared/healing/batch-clock.ts';
import type { StageName } from '../../shared/healing/profile.ts';
import { DAY_MS } from '../../shared/units.ts';
import type { RecordWindow } from './record-sources.ts';

/** `after-plan`: the plan has ended and the batch is still in its chamber. */
export type PartStage = StageName | 'after-plan';

export interface DayPart extends Part {
  readonly day: number;
}

export interface StagePart extends Part {
  readonly stage: PartStage;
}

/** Whole days from closing, the last cut at the end of the record; none before closing. */
export function dayParts(closedMs: number | null, { toMs }: RecordWindow): DayPart[] {
  if (closedMs === null) return [];
  const count = Math.ceil((toMs - closedMs) / DAY_MS);
  return Array.from({ length: count }, (_, i) => {
    const fromMs = closedMs + i * DAY_MS;
    return { day: i + 1, fromMs, toMs: Math.min(fromMs + DAY_MS, toMs) };
  });
}

/** The stages that have begun, cut at the end of the record; from closing on they leave no time out. */
export function stageParts(spans: readonly StageSpan[], { toMs }: RecordWindow): StagePart[] {
  const parts = spans
    .filter(({ startMs }) => startMs < toMs)
    .map(({ stage, startMs, endMs }): StagePart => ({ stage, fromMs: startMs, toMs: Math.min(endMs ?? toMs, toMs) }));
  const endMs = parts.at(-1)?.toMs ?? toMs;
  return endMs < toMs ? [...parts, { stage: 'after-plan', fromMs: endMs, toMs }] : parts;
}
