// In English: the page of a chamber, and adding the first.
/** Which alarms rest while the air is disturbed on purpose: never those of heat. */
const quietAir = (until: string) => `Alarms of dry, wet and cold air are quiet until ${until}; heat still tells.`;

export const chamber = {
  firstSteps: {
    title: 'From empty to the first batch',
    intro: 'Eight steps, about five minutes. Each shows by itself where it stands; you can leave and come back.',
    begin: 'Begin',
    goOn: 'Go on with the steps',
    crewIntro: 'Nothing is set up yet. A manager adds the first chamber.',
    chamber: 'Add a chamber',
    chamberWhy: 'One healing space with its own climate: a tent, a tunnel, a room.',
    chamberDone: (names: string) => `Added: ${names}`,
    chamberName: 'Name of the chamber',
    chamberExample: 'For example: Chamber 1',
    addChamber: 'Add chamber',
  },
  chamber: {
    title: 'Chamber',
    back: 'All chambers',
    notFound: 'This chamber does not exist any more.',
    rename: 'Rename the chamber',
    newName: 'Name',
    save: 'Save',
    remove: 'Remove the chamber',
    removeSure:
      'Its readings and the records of its batches are kept, but it is shown no more, and its name may be used again. Remove it?',
    removed: 'Chamber removed',
    addAnother: 'Add a chamber',
    house: (temperature: string, humidity: string) => `House air ${temperature}, ${humidity}`,
    probes: (healthy: number, all: number) => `${healthy} of ${all} canopy probes healthy`,
    spread: (coldest: string, hottest: string, driest: string) => `canopy ${coldest} to ${hottest}, driest ${driest}`,
    alarms: 'More alarms here',
  },
  disturbance: {
    working: (person: string, until: string, quietUntil: string) =>
      `${person} works in the tent until ${until}. ${quietAir(quietUntil)}`,
    afterWork: (person: string, quietUntil: string) =>
      `The air settles after work by ${person}. ${quietAir(quietUntil)}`,
    ventStep: (person: string, quietUntil: string) =>
      `The air settles after the gap was set by ${person}. ${quietAir(quietUntil)}`,
    workDone: 'Work done',
    workDoneIn: (chamber: string) => `Work done, tent closed: ${chamber}`,
  },
  service: {
    title: 'Rules out of service',
    here: (names: readonly string[]) => `No alarm here for: ${names.join(', ').toLowerCase()}.`,
    takenBy: (person: string, since: string) => `taken out of service by ${person}, since ${since}`,
    takeTitle: 'Take a rule out of service',
    hint: 'It raises no alarm in this chamber until a manager returns it: for repairs only.',
    rule: 'Rule',
    take: 'Take out of service',
    taken: (rule: string) => `Out of service: ${rule}`,
    return: 'Return to service',
    returnThis: (rule: string) => `Return to service: ${rule}`,
    returned: (rule: string) => `Back in service: ${rule}`,
  },
};
