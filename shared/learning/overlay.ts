// Batches laid over each other by healing time: hour 0 is the closing of each. Gaps stay gaps; nothing is filled in from another batch.
import { joinSamples, type TimedValue } from '../exposure/segments.ts';
import { cutLine } from '../exposure/straight-line.ts';
import { median } from '../readings/median.ts';
import { HOUR_MS } from '../units.ts';

/** One quantity of one batch, in order of time. */
export interface OverlaidBatch {
  readonly id: string;
  /** When its chamber was closed. */
  readonly closedMs: number;
  /** Longest gap between two readings that is still joined. */
  readonly silenceMs: number;
  readonly values: Iterable<TimedValue>;
}

/** Cells of `stepHours` from `fromHours` (may be negative) to `toHours` after closing; a last one that is not whole is left out. */
export interface OverlayGrid {
  readonly fromHours: number;
  readonly toHours: number;
  readonly stepHours: number;
}

/** Every column has one entry a cell. */
export interface Overlay {
  /** Middle of each cell, h after closing. */
  readonly hours: readonly number[];
  readonly batches: readonly { readonly id: string; readonly values: readonly (number | null)[] }[];
  /** Across the batches that have a value there; null where none has. */
  readonly median: readonly (number | null)[];
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  /** How many have. */
  readonly count: readonly number[];
}

/** A cell of which less than this share is known is a gap (ours). */
const LEAST_KNOWN = 0.5;

/**
 * Each cell holds the mean over its known time, exact for straight lines between readings; less than half known is null. Means hide what is
 * shorter than a cell: peaks are told by the exposure figures. `low` and `high` are the range of the batches, not an interval.
 */
export function overlayBatches(batches: readonly OverlaidBatch[], grid: OverlayGrid): Overlay {
  const cells = Math.max(0, Math.floor((grid.toHours - grid.fromHours) / grid.stepHours + 1e-9));
  const columns = batches.map((batch) => ({ id: batch.id, values: meanOfCells(batch, grid, cells) }));
  const known = Array.from({ length: cells }, (_, cell) => columns.flatMap(({ values }) => values[cell] ?? []));
  return {
    hours: known.map((_, cell) => grid.fromHours + (cell + 0.5) * grid.stepHours),
    batches: columns,
    median: known.map(median),
    low: known.map((values) => (values.length === 0 ? null : Math.min(...values))),
    high: known.map((values) => (values.length === 0 ? null : Math.max(...values))),
    count: known.map((values) => values.length),
  };
}

function meanOfCells(batch: OverlaidBatch, grid: OverlayGrid, cells: number): (number | null)[] {
  const stepMs = grid.stepHours * HOUR_MS;
  const startMs = batch.closedMs + grid.fromHours * HOUR_MS;
  const area = new Array<number>(cells).fill(0);
  const knownMs = new Array<number>(cells).fill(0);
  for (const line of joinSamples(batch.values, batch.silenceMs)) {
    if (line.kind === 'unknown') continue;
    const first = Math.max(0, Math.floor((line.fromMs - startMs) / stepMs));
    for (let cell = first; cell < cells && startMs + cell * stepMs < line.toMs; cell++) {
      const part = cutLine(line, startMs + cell * stepMs, startMs + (cell + 1) * stepMs);
      if (part === null) continue;
      const lengthMs = part.toMs - part.fromMs;
      knownMs[cell] = (knownMs[cell] ?? 0) + lengthMs;
      area[cell] = (area[cell] ?? 0) + ((part.fromValue + part.toValue) / 2) * lengthMs;
    }
  }
  return knownMs.map((known, cell) => (known < LEAST_KNOWN * stepMs ? null : (area[cell] ?? 0) / known));
}
