// How long a probe has been in wet air, and when that is long enough to say so. Capacitive humidity sensors creep upward in it and recover slowly
// (common knowledge of their makers' documents; how much and how fast differs from one to the next, so only the time is told, never a correction).
import { DAY_MS } from '../units.ts';
import type { Calibration } from './calibration.ts';

/** Above this air counts as wet, %RH: where sensors are said to creep. */
export const WET_AIR_HUMIDITY = 90;

/** So far back wet air is counted: what was longer ago is taken as recovered from. */
export const WET_AIR_DAYS = 30;

/** From here on a page says it, hours: ours, from no standard. Ten days of thirty, more than the wet days of one healing. */
export const LONG_IN_WET_AIR_HOURS = 240;

/**
 * From when wet air counts against a probe at `nowMs`, ms: since its humidity was corrected, at most thirty days back. An entry about temperature
 * alone changes nothing, nor does moving the probe: what creeps is the sensor, and it takes its past along.
 */
export function wetAirSince(calibrations: readonly Calibration[], nowMs: number): number {
  const corrected = calibrations.flatMap(({ humidity, fromMs }) =>
    humidity !== undefined && fromMs <= nowMs ? [fromMs] : [],
  );
  return Math.max(nowMs - WET_AIR_DAYS * DAY_MS, ...corrected);
}
