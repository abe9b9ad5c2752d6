// The checks of the shipped profiles: what only eyes can judge, and what to do first when the answer is no.
// Only the hours differ from crop to crop; they are given where the profiles are put together. Times of day and minutes are ours.

import { checks } from '../words/en/checks.ts';
import { profiles } from '../words/en/profiles.ts';
import type { CheckPlan } from './profile.ts';
import { askAir, storedSaying, type WantedAir } from './say-standard-text.ts';

const PRACTICE = profiles.sources.practice;

/** The list to go through before the first tray goes in. `air` is the air the crop wants there. */
export function loadingChecks(air: WantedAir, basis: string): CheckPlan[] {
  const loading = { atStage: 'loading', afterHours: 0, overdueMinutes: 60, basis: PRACTICE } as const;
  return [
    {
      ...loading,
      id: 'air-ready',
      question: askAir(air, storedSaying),
      ifNo: checks.airReady.ifNo,
      basis,
    },
    {
      ...loading,
      id: 'film-and-floor-damp',
      ...checks.filmAndFloorDamp,
    },
    {
      ...loading,
      id: 'new-blade',
      ...checks.newBlade,
    },
    {
      ...loading,
      id: 'hands-and-tools',
      ...checks.handsAndTools,
    },
    {
      ...loading,
      id: 'no-tobacco',
      ...checks.noTobacco,
    },
    {
      ...loading,
      id: 'no-direct-sun',
      ...checks.noDirectSun,
    },
  ];
}

/** Three hours after closing. */
export const filmWet: CheckPlan = {
  id: 'film-wet',
  sameAs: 'film-wet',
  ...checks.filmWet,
  afterHours: 3,
  overdueMinutes: 60,
  basis: PRACTICE,
};

/** Once a day from one day after closing to the end: until then slightly limp is all right. */
export const scionsErect: CheckPlan = {
  id: 'scions-erect',
  sameAs: 'erect',
  ...checks.scionsErect,
  afterHours: 24,
  everyHours: 24,
  overdueMinutes: 120,
  basis: PRACTICE,
};

/** A look through a gap on the last day before venting, in the morning. */
export function lookThroughGap(afterHours: number, basis: string): CheckPlan {
  return {
    id: 'look-through-gap',
    sameAs: 'erect',
    ...checks.lookThroughGap,
    afterHours,
    notBefore: '08:00',
    overdueMinutes: 120,
    basis,
  };
}

/** One hour after each step of venting. */
export function erectAfterStep(everyHours: number, untilHours: number): CheckPlan {
  return {
    id: 'erect-after-step',
    sameAs: 'erect',
    ...checks.erectAfterStep,
    atStage: 'venting',
    afterHours: 1,
    everyHours,
    untilHours,
    overdueMinutes: 60,
    basis: PRACTICE,
  };
}

/** At the beginning of hardening. */
export const hardeningChecks: readonly CheckPlan[] = [
  {
    id: 'erect-when-open',
    sameAs: 'erect',
    ...checks.erectWhenOpen,
    atStage: 'hardening',
    afterHours: 1,
    overdueMinutes: 60,
    basis: PRACTICE,
  },
  {
    id: 'film-off-before-sun',
    ...checks.filmOffBeforeSun,
    atStage: 'hardening',
    afterHours: 0,
    overdueMinutes: 60,
    basis: PRACTICE,
  },
  {
    id: 'feed',
    ...checks.feed,
    atStage: 'hardening',
    afterHours: 3,
    everyHours: 24,
    overdueMinutes: 240,
    basis: PRACTICE,
  },
];
