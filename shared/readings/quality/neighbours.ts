// Neighbours test: do the probes of one chamber tell the same story?
// It names probes to look at and sets no flag: the corner of a tent that is truly hotter must stay in the heat watch.

import { median } from '../median.ts';
import { defaultQualityLimits, type NeighbourLimits } from './quality-limits.ts';

/** One probe's values now; null = not measured, stale or already flagged. */
export interface Neighbour {
  readonly probeId: string;
  readonly temperature: number | null;
  readonly humidity: number | null;
}

export interface NeighbourSuspect {
  readonly probeId: string;
  readonly quantity: 'temperature' | 'humidity';
  readonly value: number;
  /** Median of the other probes. */
  readonly others: number;
  /** `value − others`. */
  readonly difference: number;
}

/**
 * The probes that agree (within the limit, inclusive) with fewer than half of the others: of three the odd one out, of two both, since
 * nobody can say which is right. Give it healthy probes of one place that were heard lately (`healthyCanopy` makes such a list).
 */
export function compareNeighbours(
  probesOfChamber: readonly Neighbour[],
  limits: NeighbourLimits = defaultQualityLimits.neighbours,
): NeighbourSuspect[] {
  return (['temperature', 'humidity'] as const).flatMap((quantity) =>
    probesOfChamber.flatMap((probe) => {
      const value = probe[quantity];
      if (value === null) return [];
      const others = probesOfChamber.filter((one) => one !== probe).flatMap((one) => one[quantity] ?? []);
      const middle = median(others);
      if (middle === null || isBackedBy(others, value, limits[quantity])) return [];
      return [{ probeId: probe.probeId, quantity, value, others: middle, difference: value - middle }];
    }),
  );
}

/** 1e-9: 25.5 − 25.0 is not exactly half a degree in binary for every pair. */
function isBackedBy(others: readonly number[], value: number, limit: number): boolean {
  const agreeing = others.filter((other) => Math.abs(other - value) <= limit + 1e-9);
  return agreeing.length * 2 >= others.length;
}
