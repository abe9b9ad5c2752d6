// How the air of tents and houses moves, in three tempers for each quantity. All numbers are ours, from replay.
//
// Tuned on February of open greenhouse readings (Bleiswijk, NL, 2022) and on simulated tents (steady, left in the sun,
// shaded too thinly), by the likelihood of the readings 5 to 20 minutes ahead and by what the warnings were worth; judged on March and on tents
// that were not used. Then rounded, which changed little.
import { MINUTE_MS } from '../units.ts';
import type { TrendModel } from './local-linear-trend.ts';
import type { MixtureModel } from './trend-mixture.ts';

/** No line is drawn over a longer silence: the profiles' own. */
const LONGEST_GAP_MS = 15 * MINUTE_MS;

type Temper = Pick<TrendModel, 'readingSd' | 'levelWalk' | 'slopeWalk' | 'slopeLastsMinutes'>;

/** A slope nobody has seen yet is one of those the temper brings about by itself: the spread of an Ornstein–Uhlenbeck process at rest. */
function temper(numbers: Temper): TrendModel {
  const firstSlopeSd = numbers.slopeWalk * Math.sqrt(numbers.slopeLastsMinutes / 2);
  return { ...numbers, firstSlopeSd, longestGapMs: LONGEST_GAP_MS };
}

const belief = { remembersMinutes: 20, openMind: 0.02, longestGapMs: LONGEST_GAP_MS };

/** °C. Calm: hours of slow warming. Stirred: a shade opened, a heater on. Rough: vents that open and close between two readings. */
export const temperatureModel: MixtureModel = {
  ...belief,
  tempers: [
    temper({ readingSd: 0.03, levelWalk: 0, slopeWalk: 0.004, slopeLastsMinutes: 30 }),
    temper({ readingSd: 0.03, levelWalk: 0, slopeWalk: 0.08, slopeLastsMinutes: 6 }),
    temper({ readingSd: 0.4, levelWalk: 0.2, slopeWalk: 0.003, slopeLastsMinutes: 15 }),
  ],
};

/** %RH. Calm: a closed tent. Stirred: fog on and off. Rough: film or vents opened. */
export const humidityModel: MixtureModel = {
  ...belief,
  tempers: [
    temper({ readingSd: 0.2, levelWalk: 0, slopeWalk: 0.01, slopeLastsMinutes: 60 }),
    temper({ readingSd: 0.5, levelWalk: 0, slopeWalk: 0.07, slopeLastsMinutes: 5 }),
    temper({ readingSd: 0.1, levelWalk: 1.4, slopeWalk: 0.4, slopeLastsMinutes: 5 }),
  ],
};
