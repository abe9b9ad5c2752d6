// What is wrong with a profile or a calibration that somebody wrote, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const faults: SharedWords['faults'] = {
  missing: (wanted) => `falta: dé ${wanted}`,
  unknownField: 'no es un campo conocido: quítelo o corrija su nombre',
  empty: 'no puede estar vacío',
  mustBe: (wanted, found) => `debe ser ${wanted}, no ${found}`,
  unreadable: (why) => `no se puede leer: ${why}`,
  kinds: { string: 'un texto', number: 'un número', int: 'un número entero', object: 'un objeto', array: 'una lista' },
  ofKind: (kind) => `un valor del tipo ${kind}`,
  oneOf: (values) => `uno de ${values}`,
  numberOrHouse: 'un número, o un objeto con houseOffset y fallback',
  least: (limit) => `al menos ${limit}`,
  most: (limit) => `como mucho ${limit}`,
  above: (limit) => `más de ${limit}`,
  below: (limit) => `menos de ${limit}`,
  leastText: (limit) => `un texto de al menos ${limit} caracteres`,
  mostText: (limit) => `un texto de como mucho ${limit} caracteres`,
  leastEntries: (limit) => `una lista de al menos ${limit} elementos`,
  mostEntries: (limit) => `una lista de como mucho ${limit} elementos`,
  // The settings of rules.
  rulesWanted: 'debe ser un objeto con reglas por su nombre, como {"heat": {"onDelaySeconds": 120}}',
  unknownRule: (rules: string) => `no es una regla: las reglas son ${rules}`,
  noDeadband: 'no es para esta regla, que no tiene valor: quítelo',
  noClosed: 'no tiene fase "closed": con ella empieza el prendimiento, añádala a las 0 horas',
  stageTwice: (stage) => `la fase "${stage}" aparece dos veces: deje una`,
  stageOrder: (stage, before, order) => `"${stage}" está después de "${before}": el orden es ${order}`,
  laterThanStages: (latest, given) => `debe ser posterior a las fases anteriores, hasta ${latest} horas; pone ${given}`,
  zeroHours: (stage) => `debe ser 0 para "${stage}": la empieza una persona, no el reloj`,
  noTimeOfDay: (stage) => `"${stage}" empieza cuando actúa una persona: quite la hora del día`,
  endAfterStages: (latest, given) =>
    `debe ser posterior a la última fase, que empieza a las ${latest} horas; pone ${given}`,
  outOfReach: (value, least, most, unit) => `${value} no está entre ${least} y ${most} ${unit}`,
  crossing: (lower, below, upper, above, percent) =>
    `${lower} (${below}) está por encima de ${upper} (${above}) al ${percent} % de la fase`,
  houseCrossing: (lower, difference, upper) =>
    `${lower} acaba ${difference} por encima de ${upper}, contados ambos desde el aire del invernadero`,
  idTwice: (id) => `el id "${id}" aparece dos veces: dé a cada control el suyo`,
  noMoment: 'no tiene momento: dé afterHours, atStage o los dos',
  noSuchStage: (stage) => `el plan no tiene fase "${stage}"`,
  endOfPlan: 'del plan',
  endOfStage: (stage) => `de la fase "${stage}"`,
  tooLate: (what, length, given) =>
    `debe estar antes del final ${what}, ${length} horas después de su comienzo; pone ${given}`,
  repeatTooShort: (hours) => `debe ser al menos ${hours} horas`,
  endsNoRepeat: 'termina una repetición que no existe: dé everyHours, o quítelo',
  endsBeforeBegin: (hours) => `no puede estar antes de afterHours, que es ${hours}`,
  notNumber: 'debe ser un número',
  notWhole: 'debe ser un número entero',
  notBetween: (least, most) => `debe estar entre ${least} y ${most}`,
  notAbove: (limit) => `debe ser más de ${limit}`,
  textLength: (least, most) => `debe ser un texto de ${least} a ${most} caracteres`,
  timeOfDay: 'no se puede leer: escriba una hora del día como HH:MM, por ejemplo 07:00',
  checkId: 'use minúsculas, cifras y guiones',
  nothingCorrected: 'No se corrige nada; dé una desviación de temperatura o de humedad.',
  offsetTooLarge: (largest, unit) =>
    `Una desviación de más de ${largest} ${unit} no es una calibración; revise las cifras y, si son correctas, cambie la sonda.`,
  badReference: 'Una referencia es aire de 0 a 100 %HR.',
  tooFarOff: (largest) =>
    `La sonda se desvía aquí más de ${largest} %HR; revise las cifras y, si son correctas, cambie la sonda.`,
  pointsTooNear: (least) =>
    `Los dos puntos son iguales o distan menos de ${least} %HR; use sales más separadas, o una sola desviación.`,
  badGain: (gain, least, greatest) =>
    `Estos puntos dan una ganancia de ${gain}, y lo posible es de ${least} a ${greatest}; revise las cifras y, si son correctas, cambie la sonda.`,
  enterAgain: 'la dirección ha cambiado: vuelva a ponerlo o quítelo',
  enterValue: 'ponga lo que debe decir',
};
