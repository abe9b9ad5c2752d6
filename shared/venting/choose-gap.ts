// Which of the possible gaps to take: inside the corridor with its ± to spare below, nearest to its middle, and no faster than the grace.
import { humidityOfRatio, ratioOfAir } from './humidity-ratio-series.ts';
import type { VentAir, VentBalance } from './vent-balance.ts';
import type { Refusal, WhyNot } from './why-not.ts';

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
    return partOfTheWay(allowed, air, 'grace') ?? no('dries-too-fast', sayTooFast(wish.gracePerHour));
  }
  const obstacle = findObstacle(possible, wish, isTooDry);
  if (obstacle !== null) return obstacle;
  const shortBy = safe.at(-1) === possible.at(-1) ? 'experience' : 'certainty';
  return partOfTheWay(allowed, air, shortBy) ?? no('not-sure-enough', isTooDry ? NOT_SURE_CLOSED : NOT_SURE);
}

/** Why the step cannot be reached by any gap, house air being as it is. */
function findObstacle(possible: readonly GapCandidate[], { air, step }: GapWish, isTooDry: boolean): Refusal | null {
  const narrowest = possible[0];
  if (narrowest === undefined) return no('no-gap-left', isTooDry ? NO_NARROWER : NO_WIDER);
  if (narrowest.humidity < step.low) return no('house-too-dry', sayTooDry(narrowest));
  const house = houseHumidityInside(air);
  return house > step.high ? no('house-too-wet', sayTooWet(house)) : null;
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

const NOT_SURE =
  'No gap can be told well enough to stay above the low limit; open by eye, a little at a time, and log it: that also makes the fit better.';
const NOT_SURE_CLOSED =
  'No narrower gap can be told well enough to stay above the low limit; close the tent, and mist if the air stays too dry.';
const NO_WIDER =
  'The gap is as wide as can be judged from what has been tried; open further by eye, log it, and ask again in half an hour.';
const NO_NARROWER = 'No narrower gap has been tried; close the tent, and mist if the air stays too dry.';

function sayTooFast(gracePerHour: number): string {
  return `Every gap that helps would dry the air by more than the ${gracePerHour} %RH an hour the profile allows; leave the gap as it is.`;
}

function sayTooDry({ gapPercent, humidity }: GapCandidate): string {
  return `House air is too dry for this step: even at ${gapPercent} %, the narrowest gap that can be judged, the air would come to ${Math.round(humidity)} %RH. Stay closed, or wet the house first.`;
}

function sayTooWet(house: number): string {
  return `House air is too wet for this step: in the chamber's warmth it has ${Math.round(house)} %RH itself, and no gap goes below that. Dry the house first.`;
}

function no(why: WhyNot, reason: string): Refusal {
  return { why, reason };
}
