// The next step of the opening in English: a proposal, or why there is none and what to do. Humidity comes in written, without its unit.
export const venting = {
  open: (gap: number, settles: string) => `Open to ${gap} %: ${settles}.`,
  close: (gap: number, settles: string) => `Close to ${gap} %: ${settles}.`,
  settles: (humidity: string, plusMinus: string, minutes: number) =>
    `it should settle at ${humidity} ± ${plusMinus} %RH in about ${minutes} min`,
  partOfTheWay: {
    grace: 'That is part of the way: the whole step at once would dry the plants faster than the profile allows.',
    experience: 'That is part of the way: how the air behaves at a wider gap is not known yet.',
    certainty: 'That is part of the way: at a wider gap the air might fall below the low limit.',
  },
  fixed: {
    'gap-never-changed':
      'The gap has not been changed yet, so nothing shows how fast the air exchanges; open a little, log it, and ask again in half an hour.',
    'no-house-air': 'House air is not known for this time; place a probe in the house.',
    saturated: 'The humidity stood at the sensor’s top, where its fall cannot be seen.',
    'too-fast': 'The air settled faster than the readings follow each other; let the node send more often.',
    'too-slow':
      'The air was still on its way when the window ended, so that its rate cannot be seen; leave the gap as it is for longer.',
    'no-decay':
      'The air had settled before the first reading that counts, or hardly moved; a larger step of the gap shows more.',
    'two-paces':
      'The air moved at two paces, fast and then slowly: a wet film or floor that dries hides the exchange. A larger step shows more.',
    'other-source':
      'Plants and film gave off much more or less then (a wet film, for example), so that it does not tell for now.',
    'not-monotone':
      'The fitted rates fall as the gap opens, so something else than the gap moved the air (wind, a fan, an entry in the log that is not so).',
    'fit-too-old':
      'The last change of the gap that shows anything is more than a day old; make a small one, log it, and ask again in half an hour.',
    'already-there': 'The air is inside the corridor of the step already; leave the gap as it is.',
    over: 'Venting is over.',
    'on-hold': 'The batch is on hold: leave the gap as it is, and go on with the batch when the scions stand.',
    'no-step': 'The corridor comes down no further: leave the gap as it is.',
  },
  readings: (found: number, needed: number) =>
    `Only ${found} readings follow the change, and ${needed} are needed; leave the gap as it is for longer, or let the node send more often.`,
  uncertain: (percent: number) =>
    `The rate comes out as ± ${percent} %, too little to go by; a larger step or a longer wait shows more.`,
  poorFit: (percent: number) =>
    `Air exchange explains only ${percent} % of what was measured; something else moved the humidity (mist, a wet film drying, a probe).`,
  tooFewGaps: (gap: number) =>
    `Only the gap of ${gap} % shows its rate, and it takes two; change the gap, log it, and ask again in half an hour.`,
  limp: (acts: string) => `The scions were reported limp: ${acts}.`,
  limpActs: {
    closed: 'close the tent',
    closeTo: (gap: number) => `close the gap to ${gap} %`,
    mist: 'mist',
    hold: 'hold the batch until they stand erect',
  },
  noAirNow: {
    chamber: 'No healthy probe in the chamber gives temperature and humidity now.',
    house: 'House air is not known now; without a house probe no gap can be worked out.',
  },
  stillSettling: (minutes: number) => `The air is still settling after the last change; look again in ${minutes} min.`,
  doesNotMatch: (expected: string, measured: string) =>
    `By the fit the air should stand at ${expected} %RH at the present gap, and it stands at ${measured}; something has changed, so go by eye.`,
  houseTooWet: (humidity: string) =>
    `House air is too wet for this step: in the chamber’s warmth it has ${humidity} %RH itself, and no gap goes below that. Dry the house first.`,
  houseTooDry: (gap: number, humidity: string) =>
    `House air is too dry for this step: even at ${gap} %, the narrowest gap that can be judged, the air would come to ${humidity} %RH. Stay closed, or wet the house first.`,
  noNarrowerGap: 'No narrower gap has been tried; close the tent, and mist if the air stays too dry.',
  noWiderGap:
    'The gap is as wide as can be judged from what has been tried; open further by eye, log it, and ask again in half an hour.',
  noSureNarrowerGap:
    'No narrower gap can be told well enough to stay above the low limit; close the tent, and mist if the air stays too dry.',
  noSureWiderGap:
    'No gap can be told well enough to stay above the low limit; open by eye, a little at a time, and log it: that also makes the fit better.',
  driesTooFast: (grace: string) =>
    `Every gap that helps would dry the air by more than the ${grace} %RH an hour the profile allows; leave the gap as it is.`,
  farOff: 'Venting is still more than half a day away.',
  notYet: 'The air is where the plan wants it. What to open to next is worked out an hour before the next step.',
  exchangeUnknown: (why: string) => `How the air exchanges is not known so far. ${why}`,
};
