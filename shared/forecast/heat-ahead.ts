// Heat ahead: is a warning due before the high limit is passed? The estimate and the one decision about it; the limit itself comes from the profile.
import { MINUTE_MS } from '../units.ts';
import { QUIET_MS } from './judge-warnings.ts';
import type { Measurement } from './local-linear-trend.ts';
import { chanceAfter, type TimeToLimit, timeToLimit } from './time-to-limit.ts';
import { type Mixture, type MixtureMemory, noMixture, updateMixture } from './trend-mixture.ts';
import { temperatureModel } from './trend-models.ts';

/**
 * Ours, from replay (trend-models.ts says of what). A warning is due when the temperature is nearly as likely as not to be beyond the limit in 20
 * minutes, and stands until that is less likely than one in ten. Tried beside horizons of 10 to 40 minutes and chances from 0.3 to 0.6: a nearer
 * or surer warning comes too late to shade a tent, a less sure one tells every noon of a tent that rests half a degree below its limit. A standing
 * warning is given up late, since air that was about to get hot and did not is often about to again.
 */
export const HEAT_AHEAD = { horizonMinutes: 20, warnAt: 0.45, standDownBelow: 0.1 } as const;

/** What is remembered of the heat of one chamber. Plain JSON. */
export interface HeatMemory {
  /** Trend of the hottest healthy temperature. */
  readonly trend: MixtureMemory;
  /** When it was last seen beyond the high limit; null = never. */
  readonly beyondMs: number | null;
  /** When it was seen to pass that limit; null = it is not above it, or was when it was first heard. */
  readonly passedMs: number | null;
}

export const noHeatMemory: HeatMemory = { trend: noMixture, beyondMs: null, passedMs: null };

/** Takes the hottest healthy temperature into the memory. `high` null = no limit holds. */
export function followHeat(memory: HeatMemory, measured: Measurement, high: number | null): HeatMemory {
  const trend = updateMixture(memory.trend, measured, temperatureModel);
  if (trend === memory.trend) return memory;
  const { timeMs, value } = measured;
  if (high === null || value <= high) return { trend, beyondMs: memory.beyondMs, passedMs: null };
  return { trend, beyondMs: timeMs, passedMs: isFirstBeyond(memory) ? timeMs : memory.passedMs };
}

/** True when the reading before was not above the limit; false without one. */
function isFirstBeyond({ trend, beyondMs }: HeatMemory): boolean {
  return trend !== null && trend.timeMs !== beyondMs;
}

/** The estimate from the trend, for people: a time with its interval. */
export function foreseeHeat(trend: Mixture, high: number): TimeToLimit {
  return timeToLimit(trend, temperatureModel, { limit: high, side: 'high' }, HEAT_AHEAD.horizonMinutes);
}

/** When the limit is expected to be passed: instants, so that "in about 12 min" stays true as time goes on. null = perhaps never. */
export interface Expected {
  readonly atMs: number | null;
  readonly earliestMs: number | null;
  readonly latestMs: number | null;
  /** When it was seen to be passed; null = it was not, or not seen. Left out in alarms from before this was kept. */
  readonly passedMs?: number | null;
}

/** What the heat-ahead rule looks at. */
export interface HeatAhead {
  /** Of being beyond the limit at the end of the horizon, 0–1. */
  readonly chance: number;
  /** The limit was passed less than half an hour ago: what comes now is the same heat, of which nobody needs a new warning. */
  readonly isSameHeat: boolean;
  /** Costs a search and is asked for only when a warning is given. */
  readonly expected: () => Expected;
}

/** The look ahead from what is remembered towards the high limit of now; null when nothing has been measured. */
export function lookAhead({ trend, beyondMs, passedMs }: HeatMemory, high: number): HeatAhead | null {
  if (trend === null) return null;
  return {
    chance: chanceAfter(trend, temperatureModel, { limit: high, side: 'high' }, HEAT_AHEAD.horizonMinutes),
    isSameHeat: beyondMs !== null && trend.timeMs - beyondMs < QUIET_MS,
    expected: () => ({ ...expectedFrom(foreseeHeat(trend, high)), passedMs }),
  };
}

/** True when a warning is due, or should go on standing. */
export function isHeatAhead({ chance, isSameHeat }: Omit<HeatAhead, 'expected'>, stands: boolean): boolean {
  return stands ? chance >= HEAT_AHEAD.standDownBelow : chance >= HEAT_AHEAD.warnAt && !isSameHeat;
}

function expectedFrom({ asOfMs, minutes, low, high }: TimeToLimit): Expected {
  const instant = (ahead: number | null) => (ahead === null ? null : Math.round(asOfMs + ahead * MINUTE_MS));
  return { atMs: instant(minutes), earliestMs: instant(low), latestMs: instant(high) };
}
