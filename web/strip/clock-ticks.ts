// Ticks at round local times of the site, right across a change of summer time. Pure: no library axis is used for it.
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { zoneOffsetMs } from '../when.ts';

const stepMinutes = [5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880] as const;

/** The smallest round step, in minutes, that gives at most `most` ticks. */
export function tickStepMinutes(spanMs: number, most: number): number {
  return stepMinutes.find((minutes) => spanMs / (minutes * MINUTE_MS) <= most) ?? 10_080;
}

function isRound(ms: number, stepMin: number, offsetMs: number): boolean {
  const local = ms + offsetMs;
  const minuteOfDay = Math.round((((local % DAY_MS) + DAY_MS) % DAY_MS) / MINUTE_MS);
  if (stepMin < 1440) return minuteOfDay % stepMin === 0;
  return minuteOfDay === 0 && Math.floor(local / DAY_MS) % (stepMin / 1440) === 0;
}

/** Instants in [from, to] that are round local times, at most about `most` of them. */
export function clockTicks(fromMs: number, toMs: number, zone: string, most: number): readonly number[] {
  const stepMin = tickStepMinutes(toMs - fromMs, Math.max(1, most));
  // Quarter hours reach the local hour in every zone; finer steps walk by themselves.
  const walkMs = Math.min(stepMin, 15) * MINUTE_MS;
  const isConstant = zoneOffsetMs(fromMs, zone) === zoneOffsetMs(toMs, zone) && toMs - fromMs < 60 * DAY_MS;
  const offset = zoneOffsetMs(fromMs, zone);
  const offsetAt = isConstant ? () => offset : offsetsByHour(zone);
  const ticks: number[] = [];
  for (let ms = Math.ceil(fromMs / walkMs) * walkMs; ms <= toMs; ms += walkMs)
    if (isRound(ms, stepMin, offsetAt(ms))) ticks.push(ms);
  return ticks;
}

function offsetsByHour(zone: string): (ms: number) => number {
  const known = new Map<number, number>();
  return (ms) => {
    const hour = Math.floor(ms / HOUR_MS);
    const found = known.get(hour) ?? zoneOffsetMs(ms, zone);
    known.set(hour, found);
    return found;
  };
}
