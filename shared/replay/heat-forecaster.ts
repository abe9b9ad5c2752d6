// What foresees heat in a replay: the forecast of the live watch, or a rival of it.
import { followHeat, type HeatAhead, lookAhead, noHeatMemory } from '../forecast/heat-ahead.ts';
import type { Measurement } from '../forecast/local-linear-trend.ts';

/** Foresees heat from the hottest healthy temperature of each reading. */
export interface HeatForecaster {
  /** `high` null = no limit holds. */
  take(measured: Measurement, high: number | null): void;
  lookAhead(high: number): HeatAhead | null;
}

/** The forecaster of the live watch. */
export function createForecaster(): HeatForecaster {
  let memory = noHeatMemory;
  return {
    take(measured, high) {
      memory = followHeat(memory, measured, high);
    },
    lookAhead: (high) => lookAhead(memory, high),
  };
}
