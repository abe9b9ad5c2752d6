// Dryness ahead: when falling humidity reaches the low limit. An estimate to show and no alarm: in replay it leads by a minute or two only, for
// a tent that loses its fog dries faster than anybody could act on a warning.
import { MINUTE_MS } from '../units.ts';
import type { Measurement } from './local-linear-trend.ts';
import { chanceAfter, type TimeToLimit, timeToLimit } from './time-to-limit.ts';
import { type MixtureMemory, updateMixture } from './trend-mixture.ts';
import { humidityModel } from './trend-models.ts';

/** As for heat; `freshMinutes` is ours: an older trend has nothing to say of what comes. */
export const DRY_AHEAD = { horizonMinutes: 20, sayFrom: 0.45, freshMinutes: 5 } as const;

/** Takes the driest healthy humidity, %RH, into its trend. */
export function followDryness(trend: MixtureMemory, measured: Measurement): MixtureMemory {
  return updateMixture(trend, measured, humidityModel);
}

/**
 * The estimate of when the air is drier than `low` %RH; null while nothing fresh is known, the air is drier already, or it is not likely enough
 * to come within twenty minutes.
 */
export function foreseeDryness(trend: MixtureMemory, low: number, nowMs: number): TimeToLimit | null {
  if (trend === null || nowMs - trend.timeMs > DRY_AHEAD.freshMinutes * MINUTE_MS || trend.value < low) return null;
  const { horizonMinutes, sayFrom } = DRY_AHEAD;
  const watched = { limit: low, side: 'low' } as const;
  // The times are searched for only where they are said: each of the three asks for the chance dozens of times.
  if (chanceAfter(trend, humidityModel, watched, horizonMinutes) < sayFrom) return null;
  return timeToLimit(trend, humidityModel, watched, horizonMinutes);
}
