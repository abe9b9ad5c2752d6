// What is said beside a probe that works, so that it goes on working: its battery, and long wet air. Pure.
import type { BatteryView, ProbeView } from '../shared/api/probes.ts';
import { LOW_BATTERY_PERCENT } from '../shared/readings/battery.ts';
import { LONG_IN_WET_AIR_HOURS } from '../shared/readings/wet-air.ts';
import { DAY_MS } from '../shared/units.ts';
import { agoWords } from './age.ts';
import { words } from './late-strings.ts';
import { numberText } from './quantities.ts';

/** Nodes tell of their battery with each reading or once a day; what is older says when it was told. Ours. */
const OLD_MS = 1.5 * DAY_MS;

function levelWords({ level, unit }: BatteryView): string {
  const { sensors: say } = words;
  if (unit === 'volts') return say.batteryVolts(numberText(level, 2));
  if (unit === 'unclear') return say.batteryUnclear(numberText(level, 2));
  const text = String(Math.round(level));
  return level < LOW_BATTERY_PERCENT ? say.batteryLow(text) : say.battery(text);
}

/** What is left and whether that is little, with its age where it is old; null when nothing has told. */
export function batteryWords(battery: BatteryView | null, nowMs: number): string | null {
  if (battery === null) return null;
  const ageMs = nowMs - Date.parse(battery.at);
  const text = levelWords(battery);
  return ageMs > OLD_MS ? words.sensors.batteryOld(text, agoWords(ageMs)) : text;
}

/** That a probe has been in wet air for so long that it may read high; null before that, or while it is not counted. */
export function wetAirWords({ hoursAbove90Rh: hours }: Pick<ProbeView, 'hoursAbove90Rh'>): string | null {
  if (hours === null || hours < LONG_IN_WET_AIR_HOURS) return null;
  return words.sensors.longWet(String(Math.floor(hours)), String(LONG_IN_WET_AIR_HOURS));
}
