// What is remembered of a chamber's air for looking ahead: the trend of its hottest temperature and of its driest humidity. Not stored: after a
// restart some minutes of readings make it anew.
import { followDryness } from '../../shared/forecast/dry-ahead.ts';
import { followHeat, type HeatMemory, noHeatMemory } from '../../shared/forecast/heat-ahead.ts';
import { type MixtureMemory, noMixture } from '../../shared/forecast/trend-mixture.ts';
import type { ChamberClimate } from '../../shared/readings/chamber-climate.ts';

export interface Trends {
  readonly heat: HeatMemory;
  readonly dryness: MixtureMemory;
}

export const noTrends: Trends = { heat: noHeatMemory, dryness: noMixture };

/** Takes a climate in; what it does not know leaves its trend as it was. `high` = the limit of the temperature now, null = none holds. */
export function followTrends(
  { heat, dryness }: Trends,
  { timeMs, hottest, driest }: ChamberClimate,
  high: number | null,
): Trends {
  return {
    heat: timeMs === null || hottest === null ? heat : followHeat(heat, { timeMs, value: hottest }, high),
    dryness: timeMs === null || driest === null ? dryness : followDryness(dryness, { timeMs, value: driest }),
  };
}
