// In Spanish: the page of a chamber, and adding the first.
import type { chamber as english } from '../en/chamber.ts';

const quietAir = (until: string) =>
  `Las alarmas de aire seco, húmedo y frío quedan en silencio hasta las ${until}; la de calor sigue avisando.`;

export const chamber: typeof english = {
  firstSteps: {
    title: 'De vacío al primer lote',
    intro: 'Ocho pasos, unos cinco minutos. Cada uno muestra cómo va; puede irse y volver.',
    begin: 'Empezar',
    goOn: 'Seguir con los pasos',
    crewIntro: 'Aún no hay nada configurado. Un responsable añade la primera cámara.',
    chamber: 'Añada una cámara',
    chamberWhy: 'Un espacio con clima propio: una cámara, un túnel, una sala.',
    chamberDone: (names) => `Añadidas: ${names}`,
    chamberName: 'Nombre de la cámara',
    chamberExample: 'Por ejemplo: Cámara 1',
    addChamber: 'Añadir cámara',
  },
  chamber: {
    title: 'Cámara',
    back: 'Todas las cámaras',
    notFound: 'Esta cámara ya no existe.',
    rename: 'Cambiar el nombre de la cámara',
    newName: 'Nombre',
    save: 'Guardar',
    remove: 'Quitar la cámara',
    removeSure:
      'Se guardan sus lecturas y los registros de sus lotes, pero ya no se muestra y su nombre queda libre. ¿Quitarla?',
    removed: 'Cámara quitada',
    addAnother: 'Añadir una cámara',
    house: (temperature, humidity) => `Aire del invernadero ${temperature}, ${humidity}`,
    probes: (healthy, all) => `${healthy} de ${all} sondas del cultivo sanas`,
    spread: (coldest, hottest, driest) => `cultivo de ${coldest} a ${hottest}, lo más seco ${driest}`,
    alarms: 'Más alarmas aquí',
  },
  disturbance: {
    working: (person, until, quietUntil) => `${person} trabaja en el túnel hasta las ${until}. ${quietAir(quietUntil)}`,
    afterWork: (person, quietUntil) => `El aire se estabiliza tras el trabajo de ${person}. ${quietAir(quietUntil)}`,
    ventStep: (person, quietUntil) =>
      `El aire se estabiliza después de que ${person} cambiara la abertura. ${quietAir(quietUntil)}`,
    workDone: 'Trabajo hecho',
    workDoneIn: (chamber) => `Trabajo hecho, túnel cerrado: ${chamber}`,
  },
  service: {
    title: 'Reglas fuera de servicio',
    here: (names) => `Aquí no hay alarma de: ${names.join(', ').toLowerCase()}.`,
    takenBy: (person, since) => `puesta fuera de servicio por ${person}, desde ${since}`,
    takeTitle: 'Poner una regla fuera de servicio',
    hint: 'No da alarma en esta cámara hasta que un responsable la devuelva: solo para reparaciones.',
    rule: 'Regla',
    take: 'Poner fuera de servicio',
    taken: (rule) => `Fuera de servicio: ${rule}`,
    return: 'Devolver al servicio',
    returnThis: (rule) => `Devolver al servicio: ${rule}`,
    returned: (rule) => `De nuevo en servicio: ${rule}`,
  },
};
