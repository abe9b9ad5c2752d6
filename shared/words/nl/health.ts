// What keeps the service from being well, in Dutch, for whoever asks after its health.
import type { SharedWords } from '../shared-words.ts';

export const health: SharedWords['health'] = {
  folderGone: (said) => `De gegevensmap is weg (${said}).`,
  storeSilent: (said) => `De opslag antwoordt niet (${said}).`,
  roundLate: 'De bewaking heeft al een minuut geen ronde gemaakt.',
  littleRoom: (percent) => `De schijf heeft nog ${percent} % vrij: maak ruimte voor hij vol is.`,
  noHeartbeat: (why) => `De hartslag komt niet aan: ${why}.`,
  seeAlarms: (rule) => `${rule}: zie de pagina met alarmen.`,
};
