// Ticks at round local times of the site, right across a change of summer time. Pure: no library axis is used for it.
import { DAY_MS, HOUR_MS, MINUTE_MS } from '../../shared/units.ts';
import { zoneOffsetMs } from '../when.ts';

const stepMinutes = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880] as const;
const weekMinutes = 10_080;
/** No zone puts its clock forward and back again within so short a time. */
const probeMs = 12 * HOUR_MS;

/** The smallest round step, in minutes, that gives at most `most` ticks; `mostDays` holds for steps of a day and more, whose labels are shorter. */
export function tickStepMinutes(spanMs: number, most: number, mostDays = most): number {
  const fits = (minutes: number) => spanMs / (minutes * MINUTE_MS) <= (minutes < 1440 ? most : mostDays);
  return stepMinutes.find(fits) ?? weekMinutes;
}

interface Stretch {
  readonly fromMs: number;
  /** One past its end. */
  readonly toMs: number;
  readonly offsetMs: number;
}

/** The window cut where the clock of the zone is moved, by whole minutes: as much as half an hour in places. */
export function constantStretches(fromMs: number, toMs: number, zone: string): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let start = fromMs;
  let offsetMs = zoneOffsetMs(fromMs, zone);
  for (let at = fromMs; at < toMs; ) {
    const next = Math.min(toMs, at + probeMs);
    const later = zoneOffsetMs(next, zone);
    if (later !== offsetMs) {
      const moved = firstMinuteWith(later, at, next, zone);
      stretches.push({ fromMs: start, toMs: moved, offsetMs });
      start = moved;
      offsetMs = later;
    }
    at = next;
  }
  return [...stretches, { fromMs: start, toMs: toMs + 1, offsetMs }];
}

function firstMinuteWith(offsetMs: number, beforeMs: number, afterMs: number, zone: string): number {
  let before = Math.floor(beforeMs / MINUTE_MS);
  let after = Math.ceil(afterMs / MINUTE_MS);
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (zoneOffsetMs(middle * MINUTE_MS, zone) === offsetMs) after = middle;
    else before = middle;
  }
  return after * MINUTE_MS;
}

/** Instants in [from, to] that are round local times, at most about `most` of them. A day whose midnight is skipped begins where its clock does. */
export function clockTicks(
  fromMs: number,
  toMs: number,
  zone: string,
  most: number,
  mostDays = most,
): readonly number[] {
  const stepMs = tickStepMinutes(toMs - fromMs, Math.max(1, most), Math.max(1, mostDays)) * MINUTE_MS;
  const ticks: number[] = [];
  let lastStep = Number.NaN;
  for (const { fromMs: start, toMs: end, offsetMs } of constantStretches(fromMs, toMs, zone)) {
    const isSkipped = stepMs >= DAY_MS && Math.floor((start + offsetMs) / stepMs) > lastStep;
    if (isSkipped) ticks.push(start);
    for (let local = Math.ceil((start + offsetMs) / stepMs) * stepMs; local - offsetMs < end; local += stepMs)
      // Where a day's midnight comes twice the day begins with the first.
      if (stepMs < DAY_MS || local / stepMs !== lastStep) ticks.push(local - offsetMs);
    lastStep = Math.floor((end - 1 + offsetMs) / stepMs);
  }
  return [...new Set(ticks)];
}
