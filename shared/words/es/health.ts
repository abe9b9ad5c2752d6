// What keeps the service from being well, in Spanish, for whoever asks after its health.
import type { SharedWords } from '../shared-words.ts';

export const health: SharedWords['health'] = {
  folderGone: (said) => `La carpeta de datos ya no está (${said}).`,
  storeSilent: (said) => `El almacén no responde (${said}).`,
  roundLate: 'La vigilancia lleva un minuto sin dar una vuelta.',
  littleRoom: (percent) => `Al disco le queda un ${percent} % libre: haga sitio antes de que se llene.`,
  noHeartbeat: (why) => `El latido no llega: ${why}.`,
  seeAlarms: (rule) => `${rule}: vea la página de alarmas.`,
};
