// What keeps the service from being well, in English, for whoever asks after its health.
export const health = {
  folderGone: (said: string) => `The data folder is gone (${said}).`,
  storeSilent: (said: string) => `The store does not answer (${said}).`,
  roundLate: 'The watch has not gone round for a minute.',
  littleRoom: (percent: number) => `The disk has ${percent} % free: make room before it is full.`,
  noHeartbeat: (why: string) => `The heartbeat does not arrive: ${why}.`,
  seeAlarms: (rule: string) => `${rule}: see the page of alarms.`,
};
