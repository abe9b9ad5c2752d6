// What is said beside a probe that works, so that it goes on working: its battery, and long wet air. Pure.
import type { ProbeView } from '../shared/api/probes.ts';
import { LOW_BATTERY_PERCENT } from '../shared/readings/battery.ts';
import { LONG_IN_WET_AIR_HOURS } from '../shared/readings/wet-air.ts';
import { words } from './late-strings.ts';

/** What is left, and whether that is little; null when nothing has told. */
export function batteryWords(percent: number | null): string | null {
  if (percent === null) return null;
  const text = String(Math.round(percent));
  return percent < LOW_BATTERY_PERCENT ? words.sensors.batteryLow(text) : words.sensors.battery(text);
}

/** That a probe has been in wet air for so long that it may read high; null before that, or while it is not counted. */
export function wetAirWords({ hoursAbove90Rh: hours }: Pick<ProbeView, 'hoursAbove90Rh'>): string | null {
  if (hours === null || hours < LONG_IN_WET_AIR_HOURS) return null;
  return words.sensors.longWet(String(Math.floor(hours)), String(LONG_IN_WET_AIR_HOURS));
}
