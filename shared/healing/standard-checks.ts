// The checks of the shipped profiles: what only eyes can judge, and what to do first when the answer is no.
// Only the hours differ from crop to crop; they are given where the profiles are put together. Times of day and minutes are ours.
import type { CheckPlan } from './profile.ts';

const PRACTICE = 'common practice';

/** The list to go through before the first tray goes in. `air` is the air the crop wants there, in words. */
export function loadingChecks(air: string, basis: string): CheckPlan[] {
  const loading = { atStage: 'loading', afterHours: 0, overdueMinutes: 60, basis: PRACTICE } as const;
  return [
    {
      ...loading,
      id: 'air-ready',
      question: `Is the air in the grafting room and in the tent at ${air}?`,
      ifNo: 'Wait with grafting until the air is right: warm or shade the room, wet the floor of the tent.',
      basis,
    },
    {
      ...loading,
      id: 'film-and-floor-damp',
      question: 'Are the film and the floor of the tent damp?',
      ifNo: 'Wet floor and film before the first tray goes in; do not soak the trays.',
    },
    {
      ...loading,
      id: 'new-blade',
      question: 'Is a new blade taken for each tray?',
      ifNo: 'Put a box of blades and a sharps bin at each place, and change before the next tray.',
    },
    {
      ...loading,
      id: 'hands-and-tools',
      question: 'Are hands and tools disinfected?',
      ifNo: 'Stop and disinfect, following the label; again after every break.',
    },
    {
      ...loading,
      id: 'no-tobacco',
      question: 'Is tobacco kept away from plants, hands and clothes?',
      ifNo: 'Wash hands and change gloves and apron: tobacco can carry a virus to the plants.',
    },
    {
      ...loading,
      id: 'no-direct-sun',
      question: 'Is the tent out of direct sun?',
      ifNo: 'Close the screen or hang a shade before the first tray goes in.',
    },
  ];
}

/** Three hours after closing. */
export const filmWet: CheckPlan = {
  id: 'film-wet',
  sameAs: 'film-wet',
  question: 'Is the film wet on the inside?',
  ifNo: 'Look for an open seam, wet floor and film, close again, and look once more in an hour.',
  afterHours: 3,
  overdueMinutes: 60,
  basis: PRACTICE,
};

/** Once a day from one day after closing to the end: until then slightly limp is all right. */
export const scionsErect: CheckPlan = {
  id: 'scions-erect',
  sameAs: 'erect',
  question: 'Do the scions stand erect?',
  ifNo: 'Close the tent, mist lightly, and hold the plan until they stand.',
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
    question: 'Look through a small gap, then close it: are the scions erect and fresh?',
    ifNo: 'Let in a little fresh air if it is stuffy, close again; if they are limp, mist and hold the plan.',
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
    question: 'Do the scions still stand erect, an hour after this step of venting?',
    ifNo: 'Close the gap again, mist lightly, and hold the plan.',
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
    question: 'Do the scions stand erect with the tent fully open?',
    ifNo: 'Close the tent part of the way, mist lightly, and hold the plan.',
    atStage: 'hardening',
    afterHours: 1,
    overdueMinutes: 60,
    basis: PRACTICE,
  },
  {
    id: 'film-off-before-sun',
    question: 'Is the film off before any sun reaches the plants?',
    ifNo: 'Shade the tent at once: under film in sun the plants cook.',
    atStage: 'hardening',
    afterHours: 0,
    overdueMinutes: 60,
    basis: PRACTICE,
  },
  {
    id: 'feed',
    question: 'Have the plants been given feed?',
    ifNo: 'Water with feed now, and look for trays that were left out.',
    atStage: 'hardening',
    afterHours: 3,
    everyHours: 24,
    overdueMinutes: 240,
    basis: PRACTICE,
  },
];
