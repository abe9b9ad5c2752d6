// The healing clock: hours since the chamber was closed, holds not counted. It knows no profile.
import { DAY_MS, HOUR_MS } from '../units.ts';
import type { StageName } from './profile.ts';
import { firstTimeOfDayAtOrAfter } from './time-of-day.ts';

/** What happened to a batch, as far as its plan goes. Times are ms since the epoch, `zone` is the site's IANA time zone. */
export interface BatchTimes {
  readonly openedMs: number | null;
  readonly closedMs: number | null;
  readonly finishedMs: number | null;
  readonly zone: string;
  /** `toMs` null = on hold now. */
  readonly holds: readonly { readonly fromMs: number; readonly toMs: number | null }[];
  readonly moves: readonly { readonly stage: StageName; readonly atMs: number }[];
}

/** A stretch in which the clock stood, both ends known. */
export interface HeldTime {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A closed batch's clock. `held` is sorted, without overlap, and lies after closing. */
export interface HealingClock {
  readonly closedMs: number;
  readonly zone: string;
  readonly held: readonly HeldTime[];
}

/** The clock of a batch as seen at `asOfMs`: an open hold lasts until then, or until the batch was finished. Null while not closed. */
export function healingClock(times: BatchTimes, asOfMs: number): HealingClock | null {
  const { closedMs, zone } = times;
  return closedMs === null ? null : { closedMs, zone, held: heldSince(closedMs, times, asOfMs) };
}

/** Clock hours since closing at `atMs`, holds not counted; 0 before closing and while not closed. */
export function clockHours(times: BatchTimes, atMs: number, asOfMs: number): number {
  const clock = healingClock(times, asOfMs);
  return clock === null ? 0 : clockMsAt(clock, atMs) / HOUR_MS;
}

/** The first instant (ms) at which the clock shows `hours`: the inverse of `clockHours`, to the millisecond. Null while not closed. */
export function instantOfClockHours(times: BatchTimes, hours: number, asOfMs: number): number | null {
  const clock = healingClock(times, asOfMs);
  return clock === null ? null : instantOfClockMs(clock, hours * HOUR_MS);
}

/** What the clock shows at `atMs`, in ms; 0 before closing. */
export function clockMsAt(clock: HealingClock, atMs: number): number {
  let shownMs = Math.max(0, atMs - clock.closedMs);
  for (const { fromMs, toMs } of clock.held) shownMs -= Math.max(0, Math.min(toMs, atMs) - fromMs);
  return shownMs;
}

/** The first instant at which the clock shows `shownMs` (at least 0). */
export function instantOfClockMs(clock: HealingClock, shownMs: number): number {
  let atMs = clock.closedMs + Math.max(0, Math.round(shownMs));
  for (const { fromMs, toMs } of clock.held) if (fromMs < atMs) atMs += toMs - fromMs;
  return atMs;
}

/** From `atMs` on, the first instant outside every hold and, if given, at this local time of day: nothing begins while the batch is held. */
export function firstFreeInstant(clock: HealingClock, atMs: number, timeOfDay: string | undefined): number {
  const settle = (ms: number) => (timeOfDay === undefined ? ms : firstTimeOfDayAtOrAfter(ms, timeOfDay, clock.zone));
  let freeMs = settle(atMs);
  for (const { fromMs, toMs } of clock.held) if (fromMs <= freeMs && freeMs < toMs) freeMs = settle(toMs);
  return freeMs;
}

/** The healing day: 1 for the first 24 h after closing, 2 for the next, by elapsed time (holds count); 0 before closing. */
export function healingDay(closedMs: number, atMs: number): number {
  return atMs < closedMs ? 0 : Math.floor((atMs - closedMs) / DAY_MS) + 1;
}

function heldSince(closedMs: number, times: BatchTimes, asOfMs: number): HeldTime[] {
  const openEndMs = Math.min(asOfMs, times.finishedMs ?? asOfMs);
  const stretches = times.holds
    .map((hold) => ({ fromMs: Math.max(hold.fromMs, closedMs), toMs: hold.toMs ?? openEndMs }))
    .filter((hold) => hold.toMs > hold.fromMs)
    .sort((a, b) => a.fromMs - b.fromMs);
  return stretches.reduce<HeldTime[]>(joinStretch, []);
}

function joinStretch(joined: HeldTime[], next: HeldTime): HeldTime[] {
  const last = joined.at(-1);
  if (last === undefined || last.toMs < next.fromMs) return [...joined, next];
  return [...joined.slice(0, -1), { fromMs: last.fromMs, toMs: Math.max(last.toMs, next.toMs) }];
}
