// What is wrong with a profile or a calibration that somebody wrote, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const faults: SharedWords['faults'] = {
  missing: (wanted) => `ontbreekt: geef ${wanted}`,
  unknownField: 'is geen bekend veld: haal het weg of verbeter de naam',
  empty: 'mag niet leeg zijn',
  mustBe: (wanted, found) => `moet ${wanted} zijn, niet ${found}`,
  unreadable: (why) => `is niet te lezen: ${why}`,
  kinds: { string: 'tekst', number: 'een getal', int: 'een geheel getal', object: 'een object', array: 'een lijst' },
  ofKind: (kind) => `een waarde van de soort ${kind}`,
  oneOf: (values) => `een van ${values}`,
  numberOrHouse: 'een getal, of een object met houseOffset en fallback',
  least: (limit) => `minstens ${limit}`,
  most: (limit) => `hoogstens ${limit}`,
  above: (limit) => `meer dan ${limit}`,
  below: (limit) => `minder dan ${limit}`,
  leastText: (limit) => `tekst van minstens ${limit} tekens`,
  mostText: (limit) => `tekst van hoogstens ${limit} tekens`,
  leastEntries: (limit) => `een lijst van minstens ${limit} stuks`,
  mostEntries: (limit) => `een lijst van hoogstens ${limit} stuks`,
  // The settings of rules.
  rulesWanted: 'moet een object zijn met regels op naam, zoals {"heat": {"onDelaySeconds": 120}}',
  unknownRule: (rules: string) => `is geen regel: de regels zijn ${rules}`,
  noDeadband: 'hoort niet bij deze regel, die geen waarde heeft: haal het weg',
  noClosed: 'heeft geen fase "closed": daarmee begint de vergroeiing, voeg hem toe op 0 uur',
  stageTwice: (stage) => `de fase "${stage}" staat er twee keer: houd er één`,
  stageOrder: (stage, before, order) => `"${stage}" staat na "${before}": de volgorde is ${order}`,
  laterThanStages: (latest, given) => `moet later zijn dan de fasen ervoor, tot ${latest} uur; er staat ${given}`,
  zeroHours: (stage) => `moet 0 zijn voor "${stage}": een mens begint die, niet de klok`,
  noTimeOfDay: (stage) => `"${stage}" begint als een mens iets doet: haal de tijd van de dag weg`,
  endAfterStages: (latest, given) =>
    `moet later zijn dan de laatste fase, die op ${latest} uur begint; er staat ${given}`,
  outOfReach: (value, least, most, unit) => `${value} ligt niet tussen ${least} en ${most} ${unit}`,
  crossing: (lower, below, upper, above, percent) =>
    `${lower} (${below}) ligt op ${percent} % van de fase boven ${upper} (${above})`,
  houseCrossing: (lower, difference, upper) =>
    `${lower} eindigt ${difference} boven ${upper}, allebei geteld vanaf de kaslucht`,
  idTwice: (id) => `de id "${id}" staat er twee keer: geef elke controle een eigen id`,
  noMoment: 'heeft geen moment: geef afterHours, atStage of allebei',
  noSuchStage: (stage) => `het plan heeft geen fase "${stage}"`,
  endOfPlan: 'het plan',
  endOfStage: (stage) => `de fase "${stage}"`,
  tooLate: (what, length, given) =>
    `moet vóór het einde van ${what} liggen, ${length} uur na het begin ervan; er staat ${given}`,
  repeatTooShort: (hours) => `moet minstens ${hours} uur zijn`,
  endsNoRepeat: 'beëindigt een herhaling die er niet is: geef everyHours, of haal dit weg',
  endsBeforeBegin: (hours) => `mag niet vóór afterHours liggen; dat is ${hours}`,
  notNumber: 'moet een getal zijn',
  notWhole: 'moet een geheel getal zijn',
  notBetween: (least, most) => `moet tussen ${least} en ${most} liggen`,
  notAbove: (limit) => `moet meer dan ${limit} zijn`,
  textLength: (least, most) => `moet tekst van ${least} tot ${most} tekens zijn`,
  timeOfDay: 'is niet te lezen: schrijf een tijd van de dag als UU:MM, bijvoorbeeld 07:00',
  checkId: 'gebruik kleine letters, cijfers en streepjes',
  nothingCorrected: 'Er wordt niets gecorrigeerd; geef een afwijking van temperatuur of luchtvochtigheid.',
  offsetTooLarge: (largest, unit) =>
    `Een afwijking van meer dan ${largest} ${unit} is geen kalibratie; controleer de cijfers, en vervang de voeler als ze kloppen.`,
  badReference: 'Een referentie is lucht van 0 tot 100 %RV.',
  tooFarOff: (largest) =>
    `De voeler zit er hier meer dan ${largest} %RV naast; controleer de cijfers, en vervang de voeler als ze kloppen.`,
  pointsTooNear: (least) =>
    `De twee punten zijn gelijk, of liggen minder dan ${least} %RV uit elkaar; neem zouten die verder uiteen liggen, of één afwijking.`,
  badGain: (gain, least, greatest) =>
    `Deze punten geven een versterking van ${gain}, en ${least} tot ${greatest} is mogelijk; controleer de cijfers, en vervang de voeler als ze kloppen.`,
  enterAgain: 'het adres is veranderd: voer het opnieuw in, of haal het weg',
  enterValue: 'voer in wat er moet staan',
};
