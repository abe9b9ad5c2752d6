// What came of trying the siren and the heartbeat, in English. Clocks come in written, with seconds.
export const trials = {
  siren: {
    name: 'The siren',
    switchedOff: 'The siren is switched off: switch it on, save, and test again.',
    inAlarm: 'It sounds for an alarm now. Nothing was changed.',
    brokerSilent: 'The broker did not take it: see that it runs and can be reached.',
    sounded: (on: string, off: string) => `The broker acknowledged “on” at ${on} and “off” at ${off}.`,
    takenOver: (on: string) =>
      `The broker acknowledged “on” at ${on}. Then an alarm took over, and the siren sounds for it.`,
    notBack: (on: string) =>
      `The broker acknowledged “on” at ${on}, but not “off”: that is said again until the broker has it.`,
    followed: (count: number) =>
      `${count === 1 ? 'One connection follows' : `${count} connections follow`} its topic. Whether anything sounded, only somebody beside it can say.`,
    followedByNobody: 'Nothing follows its topic: connect the lamp or the siren, then test again.',
    followersUnknown:
      'Whether anything follows its topic is not known with a broker of your own, nor whether it sounded: look and listen.',
  },
  heartbeat: {
    name: 'The heartbeat',
    notSet: 'No address is set: enter one, save, and test again.',
    answered: (clock: string, status: number) => `The address answered ${status} at ${clock}.`,
    refused: (clock: string, status: number) =>
      `The address answered ${status} at ${clock}: only 200 to 299 counts, and redirects are not followed.`,
    failed: (clock: string, reason: string) => `No answer by ${clock}: ${reason}.`,
  },
};
