// What came of trying the siren and the heartbeat, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const trials: SharedWords['trials'] = {
  siren: {
    name: 'De sirene',
    switchedOff: 'De sirene staat uit: zet hem aan, bewaar, en probeer opnieuw.',
    inAlarm: 'Hij klinkt nu voor een alarm. Er is niets veranderd.',
    brokerSilent: 'De broker nam het niet aan: kijk of hij draait en bereikbaar is.',
    sounded: (on, off) => `De broker bevestigde “on” om ${on} en “off” om ${off}.`,
    takenOver: (on) =>
      `De broker bevestigde “on” om ${on}. Toen nam een alarm het over, en daarvoor klinkt de sirene nu.`,
    notBack: (on) => `De broker bevestigde “on” om ${on}, maar niet “off”: dat wordt herhaald tot de broker het heeft.`,
    followed: (count) =>
      `${count === 1 ? 'Eén verbinding volgt' : `${count} verbindingen volgen`} het topic. Of er iets klonk, kan alleen iemand ter plaatse zeggen.`,
    followedByNobody: 'Niets volgt het topic: sluit de lamp of de sirene aan en probeer opnieuw.',
    followersUnknown:
      'Of iets het topic volgt is bij een eigen broker niet bekend, en ook niet of het klonk: ga kijken en luisteren.',
  },
  heartbeat: {
    name: 'De hartslag',
    notSet: 'Er is geen adres ingevuld: vul het in, bewaar, en probeer opnieuw.',
    answered: (clock, status) => `Het adres antwoordde ${status} om ${clock}.`,
    refused: (clock, status) =>
      `Het adres antwoordde ${status} om ${clock}: alleen 200 tot 299 telt, en omleidingen worden niet gevolgd.`,
    failed: (clock, reason) => `Geen antwoord tot ${clock}: ${reason}.`,
  },
};
