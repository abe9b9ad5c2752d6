// The checks of the shipped profiles, in English. A stored profile carries these words; `say-check.ts` finds them again by the unchanged text.
export const checks = {
  airReady: {
    question: (temperature: string, humidity: string) =>
      `Is the air in the grafting room and in the tent at ${temperature} and ${humidity}?`,
    ifNo: 'Wait with grafting until the air is right: warm or shade the room, wet the floor of the tent.',
  },
  filmAndFloorDamp: {
    question: 'Are the film and the floor of the tent damp?',
    ifNo: 'Wet floor and film before the first tray goes in; do not soak the trays.',
  },
  newBlade: {
    question: 'Is a new blade taken for each tray?',
    ifNo: 'Put a box of blades and a sharps bin at each place, and change before the next tray.',
  },
  handsAndTools: {
    question: 'Are hands and tools disinfected?',
    ifNo: 'Stop and disinfect, following the label; again after every break.',
  },
  noTobacco: {
    question: 'Is tobacco kept away from plants, hands and clothes?',
    ifNo: 'Wash hands and change gloves and apron: tobacco can carry a virus to the plants.',
  },
  noDirectSun: {
    question: 'Is the tent out of direct sun?',
    ifNo: 'Close the screen or hang a shade before the first tray goes in.',
  },
  filmWet: {
    question: 'Is the film wet on the inside?',
    ifNo: 'Look for an open seam, wet floor and film, close again, and look once more in an hour.',
  },
  scionsErect: {
    question: 'Do the scions stand erect?',
    ifNo: 'Close the tent, mist lightly, and hold the plan until they stand.',
  },
  lookThroughGap: {
    question: 'Look through a small gap, then close it: are the scions erect and fresh?',
    ifNo: 'Let in a little fresh air if it is stuffy, close again; if they are limp, mist and hold the plan.',
  },
  erectAfterStep: {
    question: 'Do the scions still stand erect, an hour after this step of venting?',
    ifNo: 'Close the gap again, mist lightly, and hold the plan.',
  },
  erectWhenOpen: {
    question: 'Do the scions stand erect with the tent fully open?',
    ifNo: 'Close the tent part of the way, mist lightly, and hold the plan.',
  },
  filmOffBeforeSun: {
    question: 'Is the film off before any sun reaches the plants?',
    ifNo: 'Shade the tent at once: under film in sun the plants cook.',
  },
  feed: {
    question: 'Have the plants been given feed?',
    ifNo: 'Water with feed now, and look for trays that were left out.',
  },
  reportedLimp: {
    question: 'Do the scions stand erect?',
    ifNo: 'Close the gap, mist lightly, and hold the plan.',
  },
  reportedDry: {
    question: 'Is the film wet on the inside?',
    ifNo: 'Look for an open seam, wet floor and film.',
  },
};
