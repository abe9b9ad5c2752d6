// The battery of a node, where it tells of it: percent that is left, or volts. A unit that is not told is never guessed, and a battery that cannot
// be read is left out: it refuses no reading.
import { asNumber, isJsonObject, type JsonObject } from './json-object.ts';
import { type ResolvedRecord, resolveSenml } from './resolve-senml.ts';

/** Below this a battery is called low: ours; a node at a reading a minute then has days left, not weeks. */
export const LOW_BATTERY_PERCENT = 20;

/** What a battery can be told in; `unclear`: a number that may not be percent, and whose unit nobody told. */
export const batteryUnits = ['percent', 'volts', 'unclear'] as const;

export interface Battery {
  readonly level: number;
  readonly unit: (typeof batteryUnits)[number];
}

/**
 * The newest battery of a parsed plain payload: `"battery": 87` in percent, `"batteryVolts": 3.71` in volts; null when there is none. A `battery`
 * that is above 100, or looks like the volts of a small cell, is unclear.
 */
export function plainBattery(value: unknown): Battery | null {
  const list = Array.isArray(value) ? value : [value];
  return list.filter(isJsonObject).reduce<Battery | null>((newest, element) => batteryIn(element) ?? newest, null);
}

function batteryIn({ battery, batteryVolts }: JsonObject): Battery | null {
  const volts = levelOf(batteryVolts);
  if (volts !== null) return { level: volts, unit: 'volts' };
  const level = levelOf(battery);
  return level === null ? null : { level, unit: level > 100 || looksLikeVolts(level) ? 'unclear' : 'percent' };
}

/** From an empty pair of alkaline cells (1.8 V) to a full lithium cell (4.2 V), from memory; percent seldom come with a fraction. */
function looksLikeVolts(level: number): boolean {
  return level >= 1.5 && level <= 4.5 && !Number.isInteger(level);
}

/**
 * The newest battery of a parsed SenML pack: a record whose name ends in `battery`; null when there is none. Names are looked at first, so that
 * a pack without one costs next to nothing.
 */
export function senmlBattery(pack: readonly unknown[], arrivalMs: number): Battery | null {
  if (!pack.some(namesBattery)) return null;
  let newest: { readonly timeMs: number; readonly battery: Battery } | null = null;
  for (const record of resolveSenml(pack, arrivalMs)) {
    if ('reason' in record || !record.name.endsWith('battery')) continue;
    const battery = batteryOf(record);
    if (battery !== null && (newest === null || record.timeMs >= newest.timeMs))
      newest = { timeMs: record.timeMs, battery };
  }
  return newest?.battery ?? null;
}

/** RFC 8428 §12.1: `%EL` = remaining battery energy level in percent, `/` = ratio, `V` = volt; `mV` is a secondary unit of RFC 8798. */
function batteryOf({ unit, value }: ResolvedRecord): Battery | null {
  const level = levelOf(value);
  if (level === null) return null;
  if (unit === 'V') return { level, unit: 'volts' };
  if (unit === 'mV') return { level: level / 1000, unit: 'volts' };
  const percent = unit === '/' ? level * 100 : level;
  return (unit === '%EL' || unit === '/') && percent <= 100 ? { level: percent, unit: 'percent' } : null;
}

function namesBattery(record: unknown): boolean {
  if (!isJsonObject(record)) return false;
  const { n, bn } = record;
  return (typeof n === 'string' && n.endsWith('battery')) || (typeof bn === 'string' && bn.endsWith('battery'));
}

function levelOf(value: unknown): number | null {
  const level = asNumber(value ?? null);
  return level === null || level < 0 ? null : level;
}
