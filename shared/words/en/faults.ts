// What is wrong with a profile, a calibration or a mapping that somebody wrote, in English. Names in quotation marks are those of the document's fields.
export const faults = {
  // The shape of a profile.
  missing: (wanted: string) => `is missing: give ${wanted}`,
  unknownField: 'is not a known field: remove it or correct its name',
  empty: 'must not be empty',
  mustBe: (wanted: string, found: string) => `must be ${wanted}, not ${found}`,
  unreadable: (why: string) => `cannot be read: ${why}`,
  kinds: {
    string: 'text',
    number: 'a number',
    int: 'a whole number',
    object: 'an object',
    array: 'a list',
  } as Record<string, string>,
  ofKind: (kind: string) => `a value of the kind ${kind}`,
  oneOf: (values: string) => `one of ${values}`,
  numberOrHouse: 'a number, or an object with houseOffset and fallback',
  least: (limit: string) => `at least ${limit}`,
  most: (limit: string) => `at most ${limit}`,
  above: (limit: string) => `above ${limit}`,
  below: (limit: string) => `below ${limit}`,
  leastText: (limit: string) => `text of at least ${limit} characters`,
  mostText: (limit: string) => `text of at most ${limit} characters`,
  leastEntries: (limit: string) => `a list of at least ${limit} entries`,
  mostEntries: (limit: string) => `a list of at most ${limit} entries`,
  // The settings of rules.
  rulesWanted: 'must be an object with rules by their name, like {"heat": {"onDelaySeconds": 120}}',
  unknownRule: (rules: string) => `is no rule: the rules are ${rules}`,
  noDeadband: 'is not for this rule, which has no value to come back: remove it',
  // Stages.
  noClosed: 'has no stage "closed": healing begins with it, so add one at 0 hours',
  stageTwice: (stage: string) => `the stage "${stage}" stands twice: keep one of them`,
  stageOrder: (stage: string, before: string, order: string) =>
    `"${stage}" stands after "${before}": the order is ${order}`,
  laterThanStages: (latest: number, given: number) =>
    `must be later than the stages before it, up to ${latest} hours; it says ${given}`,
  zeroHours: (stage: string) => `must be 0 for "${stage}": a person begins it, not the clock`,
  noTimeOfDay: (stage: string) => `"${stage}" begins when a person acts: remove the time of day`,
  endAfterStages: (latest: number, given: number) =>
    `must be later than the last stage, which begins at ${latest} hours; it says ${given}`,
  // Limits.
  outOfReach: (value: number, least: number, most: number, unit: string) =>
    `${value} is not between ${least} and ${most} ${unit}`,
  crossing: (lower: string, below: number, upper: string, above: number, percent: number) =>
    `${lower} (${below}) is above ${upper} (${above}) ${percent} % of the way through the stage`,
  houseCrossing: (lower: string, difference: number, upper: string) =>
    `${lower} ends ${difference} above ${upper}, both counted from house air`,
  // Checks.
  idTwice: (id: string) => `the id "${id}" stands twice: give each check its own`,
  noMoment: 'has no moment: give afterHours, atStage, or both',
  noSuchStage: (stage: string) => `the plan has no stage "${stage}"`,
  endOfPlan: 'the plan',
  endOfStage: (stage: string) => `the stage "${stage}"`,
  tooLate: (what: string, length: number, given: number) =>
    `must be earlier than the end of ${what}, ${length} hours after its beginning; it says ${given}`,
  repeatTooShort: (hours: number) => `must be at least ${hours} hours`,
  endsNoRepeat: 'ends a repeat that is not there: give everyHours, or remove it',
  endsBeforeBegin: (hours: number) => `must not be before afterHours, which is ${hours}`,
  // Fields of a form that is being filled in.
  notNumber: 'must be a number',
  notWhole: 'must be a whole number',
  notBetween: (least: number, most: number) => `must be between ${least} and ${most}`,
  notAbove: (limit: number) => `must be above ${limit}`,
  textLength: (least: number, most: number) => `must be text of ${least} to ${most} characters`,
  timeOfDay: 'cannot be read: write a time of day as HH:MM, for example 07:00',
  checkId: 'use lower-case letters, digits and dashes',
  // Calibrations.
  nothingCorrected: 'Nothing is corrected; give an offset of temperature or humidity.',
  offsetTooLarge: (largest: number, unit: string) =>
    `An offset of more than ${largest} ${unit} is not a calibration; check the figures, and replace the probe if they are right.`,
  badReference: 'A reference is air of 0 to 100 %RH.',
  tooFarOff: (largest: number) =>
    `The probe is more than ${largest} %RH off here; check the figures, and replace the probe if they are right.`,
  pointsTooNear: (least: number) =>
    `The two points are the same, or less than ${least} %RH apart; take salts further apart, or one offset.`,
  badGain: (gain: string, least: string, greatest: string) =>
    `These points give a gain of ${gain}, and ${least} to ${greatest} is possible; check the figures, and replace the probe if they are right.`,
  // Mappings of topics.
  writeFilter: 'write a topic filter, for example sensors/+/air',
  wildcardAlone: 'let + and # stand alone between slashes',
  hashLast: 'put # last',
  ownTopics: 'topics under takewell/v1 need no mapping',
  mappedNode: (fault: string) => `the node ${fault}; or take it from the topic with level:0, level:1, …`,
  levelsOfFilter: (levels: number) => `the filter has ${levels} levels, counted from level:0`,
  whereTemperature: 'say where the temperature stands, or the humidity, or both',
  // Channels.
  enterAgain: 'the address has changed: enter it again, or take it away',
  enterValue: 'enter what it is to say',
};
