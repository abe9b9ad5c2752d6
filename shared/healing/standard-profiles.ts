// The shipped profiles: every limit of a healing climate, each with where it comes from. No other file may hold a limit.
// They are starting points to be copied and changed. A humidity `high` of 100 watches nothing: air cannot be wetter than saturated.
import { profiles } from '../words/en/profiles.ts';
import type { Limit, LimitEnd, LimitSet, Profile, ProfileDocument } from './profile.ts';
import { standardAirs } from './say-standard-text.ts';
import {
  erectAfterStep,
  filmWet,
  hardeningChecks,
  loadingChecks,
  lookThroughGap,
  scionsErect,
} from './standard-checks.ts';

const {
  practice: PRACTICE,
  ours: OURS,
  starting: STARTING,
  wilt: WILT,
  healingHumidity: HEALING_HUMIDITY,
  callus: CALLUS,
  watermelonNight: WATERMELON_NIGHT,
  watermelonHumidity: WATERMELON_HUMIDITY,
  watermelonVpd: WATERMELON_VPD,
} = profiles.sources;

const constant = (value: number, basis: string): Limit => ({ shape: 'constant', value, basis });
const ramp = (from: number, to: LimitEnd, basis: string): Limit => ({ shape: 'ramp', from, to, basis });
const stairs = (from: number, to: LimitEnd, steps: number, basis: string): Limit => ({
  shape: 'stairs',
  from,
  to,
  steps,
  basis,
});
const levels = (values: LimitEnd[], basis: string): Limit => ({ shape: 'levels', values, basis });
/** House air's running day mean plus an offset, with a number to fall back on. */
const house = (houseOffset: number, fallback: number): LimitEnd => ({ houseOffset, fallback });

/** Humidity when the film is off: around house level, as wide as a day and a night of house air, all ours. */
const houseHumidity: LimitSet = { low: levels([house(-20, 45)], OURS), high: levels([house(25, 90)], OURS) };

/** Humidity while loading: five on either side of the wanted 80–90 %RH, so that coming and going is no alarm. */
const loadingHumidity: LimitSet = { low: constant(75, OURS), high: constant(95, OURS) };

/** 1 °C an hour; 5 %RH an hour takes the low limit from loading to closed within the three hours in which the film gets wet. */
const grace: ProfileDocument['grace'] = { temperaturePerHour: 1, humidityPerHour: 5, basis: OURS };

const tomatoTent: LimitSet = {
  lowLow: constant(16, OURS),
  low: constant(20, CALLUS),
  high: constant(28, PRACTICE),
  highHigh: constant(29, PRACTICE),
};

const tomatoCommonPractice: ProfileDocument = {
  name: profiles.names.tomato,
  crop: profiles.crops.tomato,
  note: profiles.notes.tomato,
  grace,
  silenceMinutes: 15,
  stages: [
    {
      stage: 'loading',
      afterHours: 0,
      temperature: { low: constant(19, OURS), high: constant(24, OURS), highHigh: constant(28, PRACTICE) },
      humidity: loadingHumidity,
    },
    {
      stage: 'closed',
      afterHours: 0,
      temperature: tomatoTent,
      humidity: { lowLow: constant(85, HEALING_HUMIDITY), low: constant(90, WILT), high: constant(100, PRACTICE) },
    },
    {
      stage: 'venting',
      afterHours: 96,
      notBefore: '07:00',
      temperature: tomatoTent,
      // Down to house level in two days is common practice; the number of steps and the margins around house level are ours.
      humidity: {
        lowLow: stairs(85, house(-20, 45), 4, OURS),
        low: stairs(90, house(-10, 55), 4, PRACTICE),
        high: stairs(100, house(15, 80), 4, PRACTICE),
      },
    },
    {
      stage: 'hardening',
      afterHours: 144,
      notBefore: '07:00',
      temperature: { ...tomatoTent, lowLow: ramp(16, 12, OURS), low: ramp(20, 16, OURS) },
      humidity: houseHumidity,
    },
  ],
  endsAfterHours: 192,
  endsNotBefore: '07:00',
  checks: [
    ...loadingChecks(standardAirs.tomato, PRACTICE),
    filmWet,
    scionsErect,
    lookThroughGap(72, PRACTICE),
    erectAfterStep(12, 48),
    ...hardeningChecks,
  ],
};

const solanaceousTent: LimitSet = {
  lowLow: constant(20, CALLUS),
  low: constant(24, STARTING),
  high: constant(27, STARTING),
  highHigh: constant(29, PRACTICE),
};

const solanaceousWarm: ProfileDocument = {
  name: profiles.names.solanaceous,
  crop: profiles.crops.solanaceous,
  note: profiles.notes.solanaceous,
  grace,
  silenceMinutes: 15,
  stages: [
    {
      stage: 'loading',
      afterHours: 0,
      temperature: { low: constant(20, OURS), high: constant(27, STARTING), highHigh: constant(29, PRACTICE) },
      humidity: loadingHumidity,
    },
    {
      stage: 'closed',
      afterHours: 0,
      temperature: solanaceousTent,
      humidity: { lowLow: constant(90, WILT), low: constant(95, STARTING), high: constant(100, STARTING) },
    },
    {
      stage: 'venting',
      afterHours: 72,
      notBefore: '07:00',
      temperature: solanaceousTent,
      humidity: {
        lowLow: levels([87, 85, 80, 70], OURS),
        low: levels([92, 90, 85, 75], STARTING),
        high: levels([100, 100, 90, 85], STARTING),
      },
    },
    {
      stage: 'hardening',
      afterHours: 168,
      notBefore: '07:00',
      temperature: { low: ramp(24, 18, OURS), high: constant(28, OURS), highHigh: constant(30, OURS) },
      humidity: houseHumidity,
    },
  ],
  endsAfterHours: 216,
  endsNotBefore: '07:00',
  checks: [
    ...loadingChecks(standardAirs.solanaceous, OURS),
    filmWet,
    scionsErect,
    lookThroughGap(48, OURS),
    erectAfterStep(24, 96),
    ...hardeningChecks,
  ],
};

const cucurbitTent: LimitSet = {
  lowLow: constant(15, WATERMELON_NIGHT),
  low: constant(18, STARTING),
  high: constant(28, STARTING),
  highHigh: constant(30, OURS),
};

const cucurbitWarm: ProfileDocument = {
  name: profiles.names.cucurbit,
  crop: profiles.crops.cucurbit,
  note: profiles.notes.cucurbit,
  grace,
  silenceMinutes: 15,
  stages: [
    {
      stage: 'loading',
      afterHours: 0,
      temperature: { low: constant(20, OURS), high: constant(28, STARTING), highHigh: constant(30, OURS) },
      humidity: loadingHumidity,
    },
    {
      stage: 'closed',
      afterHours: 0,
      temperature: cucurbitTent,
      humidity: {
        lowLow: constant(80, WATERMELON_HUMIDITY),
        low: constant(95, STARTING),
        high: constant(100, STARTING),
      },
      vpdKpa: { high: 0.76, basis: WATERMELON_VPD },
    },
    {
      stage: 'venting',
      afterHours: 72,
      notBefore: '07:00',
      temperature: cucurbitTent,
      // Day 8 is ours: between the last published day and the house.
      humidity: {
        lowLow: levels([80, 80, 80, 70, house(-20, 45)], OURS),
        low: levels([92, 90, 88, 80, house(-10, 55)], STARTING),
        high: levels([100, 100, 92, 88, house(15, 80)], STARTING),
      },
    },
    {
      stage: 'hardening',
      afterHours: 192,
      notBefore: '07:00',
      temperature: { ...cucurbitTent, high: constant(30, OURS), highHigh: constant(32, CALLUS) },
      humidity: houseHumidity,
    },
  ],
  endsAfterHours: 240,
  endsNotBefore: '07:00',
  checks: [
    ...loadingChecks(standardAirs.cucurbit, OURS),
    filmWet,
    scionsErect,
    lookThroughGap(48, OURS),
    erectAfterStep(24, 120),
    ...hardeningChecks,
  ],
};

/** The profiles that come with Takewell, the tomato one first: it is the default. */
export const standardProfiles: readonly Profile[] = [
  { id: 'tomato-common-practice', version: 1, document: tomatoCommonPractice },
  { id: 'solanaceous-warm', version: 1, document: solanaceousWarm },
  { id: 'cucurbit-warm', version: 1, document: cucurbitWarm },
];

/** The shipped profile of an id, or null. */
export function findStandardProfile(id: string): Profile | null {
  return standardProfiles.find((profile) => profile.id === id) ?? null;
}
