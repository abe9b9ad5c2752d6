// Dryness ahead: when falling humidity reaches the low limit. An estimate to show and no alarm: in replay it leads by a minute or two only, for
// a tent that loses its fog dries faster than anybody could act on a warning.
import { type TimeToLimit, timeToLimit } from './time-to-limit.ts';
import type { Mixture } from './trend-mixture.ts';
import { humidityModel } from './trend-models.ts';

/** As for heat. */
export const DRY_AHEAD = { horizonMinutes: 20, warnAt: 0.45, standDownBelow: 0.1 } as const;

/** The estimate from the trend of the driest healthy humidity. */
export function foreseeDryness(trend: Mixture, low: number): TimeToLimit {
  return timeToLimit(trend, humidityModel, { limit: low, side: 'low' }, DRY_AHEAD.horizonMinutes);
}

/** True when dryness is worth saying, or should go on being said. */
export function isDryAhead(chance: number, stands: boolean): boolean {
  return chance >= (stands ? DRY_AHEAD.standDownBelow : DRY_AHEAD.warnAt);
}
