// The battery of a node, where it tells of it: percent that is left. A battery that cannot be read is left out and never refuses a reading.
import { asNumber, isJsonObject } from './json-object.ts';
import { resolveSenml } from './resolve-senml.ts';

/** Below this a battery is called low: ours; a node at a reading a minute then has days left, not weeks. */
export const LOW_BATTERY_PERCENT = 20;

/** The newest battery of a parsed plain payload: `"battery": 87`, in percent; null when there is none. */
export function plainBattery(value: unknown): number | null {
  const list = Array.isArray(value) ? value : [value];
  const elements = list.filter(isJsonObject).filter((element) => 'battery' in element);
  return percentOrNull(elements.at(-1)?.['battery']);
}

/**
 * The newest battery of a parsed SenML pack: a record whose name ends in `battery` with the unit `%EL`, the remaining energy level in percent
 * (RFC 8428 §12.1); null when there is none. Names are looked at first, so that a pack without one costs next to nothing.
 */
export function senmlBattery(pack: readonly unknown[], arrivalMs: number): number | null {
  if (!pack.some(namesBattery)) return null;
  let newest: { readonly timeMs: number; readonly percent: number } | null = null;
  for (const record of resolveSenml(pack, arrivalMs)) {
    if ('reason' in record || !record.name.endsWith('battery') || record.unit !== '%EL') continue;
    const percent = percentOrNull(record.value);
    if (percent !== null && (newest === null || record.timeMs >= newest.timeMs))
      newest = { timeMs: record.timeMs, percent };
  }
  return newest?.percent ?? null;
}

function namesBattery(record: unknown): boolean {
  if (!isJsonObject(record)) return false;
  const { n, bn } = record;
  return (typeof n === 'string' && n.endsWith('battery')) || (typeof bn === 'string' && bn.endsWith('battery'));
}

function percentOrNull(value: unknown): number | null {
  const percent = asNumber(value ?? null);
  return percent === null || percent < 0 || percent > 100 ? null : percent;
}
