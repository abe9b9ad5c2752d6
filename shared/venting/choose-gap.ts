// Which of the possible gaps to take: inside the corridor with its ± to spare below, nearest to its middle, and no faster than the grace.
import { humidityOfRatio, ratioOfAir } from './humidity-ratio-series.ts';
import type { VentAir, VentBalance } from './vent-balance.ts';
import type { Refusal } from './why-not.ts';

export interface GapCandidate extends VentBalance {
  readonly gapPercent: number;
}

export interface GapChoice {
  readonly candidate: GapCandidate;
  /** The fall in the first hour, %RH: the steepest hour. 0 where humidity rises. */
  readonly dryingRatePerHour: number;
  /** What keeps the choice short of the step: the grace, the widest gap that can be judged, or the ± of wider ones; null = it reaches it. */
  readonly shortBy: 'grace' | 'experience' | 'certainty' | null;
}

export interface GapWish {
  readonly air: VentAir;
  readonly step: { readonly low: number; readonly high: number };
  readonly gracePerHour: number;
}

/** A part of the way that changes less than this is no use, %RH. */
const LEAST_USE = 1;

/**
 * Too wet now: of the wider gaps that neither fall below the step nor in their first hour faster than the grace, the one nearest to the step's
 * middle; failing that the widest of them, as a part of the way. Too dry now: the same among the narrower gaps, whatever the speed, since
 * air that gets wetter harms nobody. Candidates go from narrow to wide.
 */
export function chooseGap(candidates: readonly GapCandidate[], wish: GapWish): GapChoice | Refusal {
  const { step, air } = wish;
  const isTooDry = air.chamber.humidity < step.low;
  const gapNow = air.gapPercent;
  const possible = candidates.filter(({ gapPercent }) => (isTooDry ? gapPercent < gapNow : gapPercent > gapNow));
  const safe = possible.filter(({ humidity, plusMinus }) => humidity - plusMinus >= step.low);
  const allowed = safe.filter((one) => fallInFirstHour(one, air) <= wish.gracePerHour);
  const best = nearest(
    allowed.filter(({ humidity }) => humidity <= step.high),
    (step.low + step.high) / 2,
  );
  if (best !== null) return describe(best, air, null);
  if (safe.some(({ humidity }) => humidity <= step.high)) {
    return partOfTheWay(allowed, air, 'grace') ?? { why: 'dries-too-fast', gracePerHour: wish.gracePerHour };
  }
  const obstacle = findObstacle(possible, wish, isTooDry);
  if (obstacle !== null) return obstacle;
  const shortBy = safe.at(-1) === possible.at(-1) ? 'experience' : 'certainty';
  return partOfTheWay(allowed, air, shortBy) ?? { why: 'not-sure-enough', isTooDry };
}

/** Why the step cannot be reached by any gap, house air being as it is. */
function findObstacle(possible: readonly GapCandidate[], { air, step }: GapWish, isTooDry: boolean): Refusal | null {
  const narrowest = possible[0];
  if (narrowest === undefined) return { why: 'no-gap-left', isTooDry };
  const { gapPercent, humidity } = narrowest;
  if (humidity < step.low) return { why: 'house-too-dry', gapPercent, humidity };
  const house = houseHumidityInside(air);
  return house > step.high ? { why: 'house-too-wet', humidity: house } : null;
}

function partOfTheWay(
  allowed: readonly GapCandidate[],
  air: VentAir,
  shortBy: NonNullable<GapChoice['shortBy']>,
): GapChoice | null {
  const widest = allowed.at(-1);
  if (widest === undefined || Math.abs(air.chamber.humidity - widest.humidity) < LEAST_USE) return null;
  return describe(widest, air, shortBy);
}

function describe(candidate: GapCandidate, air: VentAir, shortBy: GapChoice['shortBy']): GapChoice {
  return { candidate, dryingRatePerHour: fallInFirstHour(candidate, air), shortBy };
}

function fallInFirstHour({ humidity, ratePerHour }: GapCandidate, { chamber }: VentAir): number {
  return Math.max(0, chamber.humidity - humidity) * -Math.expm1(-ratePerHour);
}

function nearest(candidates: readonly GapCandidate[], aim: number): GapCandidate | null {
  return candidates.reduce<GapCandidate | null>((best, one) => {
    return best === null || Math.abs(one.humidity - aim) < Math.abs(best.humidity - aim) ? one : best;
  }, null);
}

/** House air as humid as it would be in the chamber's warmth: the driest that any gap can reach. */
function houseHumidityInside({ chamber, house, altitudeM }: VentAir): number {
  return humidityOfRatio(ratioOfAir(house.temperature, house.humidity, altitudeM), chamber.temperature, altitudeM);
}
