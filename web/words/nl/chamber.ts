// In Dutch: the page of a chamber, and adding the first.
import type { chamber as english } from '../en/chamber.ts';

const quietAir = (until: string) =>
  `Alarmen voor droge, natte en koude lucht zwijgen tot ${until}; hitte meldt zich wel.`;

export const chamber: typeof english = {
  firstSteps: {
    title: 'Van leeg naar de eerste partij',
    intro:
      'Acht stappen, ongeveer vijf minuten. Elke stap laat zelf zien hoe het ermee staat; je kunt weggaan en terugkomen.',
    begin: 'Beginnen',
    goOn: 'Verder met de stappen',
    crewIntro: 'Er is nog niets ingesteld. Een beheerder voegt de eerste tent toe.',
    chamber: 'Voeg een tent toe',
    chamberWhy: 'Eén ruimte met een eigen klimaat: een tent, een tunnel, een cel.',
    chamberDone: (names) => `Toegevoegd: ${names}`,
    chamberName: 'Naam van de tent',
    chamberExample: 'Bijvoorbeeld: Tent 1',
    addChamber: 'Tent toevoegen',
  },
  chamber: {
    title: 'Tent',
    back: 'Alle tenten',
    notFound: 'Deze tent bestaat niet meer.',
    rename: 'Geef de tent een andere naam',
    newName: 'Naam',
    save: 'Opslaan',
    remove: 'Verwijder de tent',
    removeSure:
      'De metingen en de verslagen van de partijen blijven bewaard, maar de tent wordt niet meer getoond en de naam komt vrij. Verwijderen?',
    removed: 'Tent verwijderd',
    addAnother: 'Voeg een tent toe',
    house: (temperature, humidity) => `Kaslucht ${temperature}, ${humidity}`,
    probes: (healthy, all) => `${healthy} van ${all} voelers in het gewas gezond`,
    spread: (coldest, hottest, driest) => `gewas ${coldest} tot ${hottest}, droogst ${driest}`,
    alarms: 'Meer alarmen hier',
  },
  disturbance: {
    working: (person, until, quietUntil) => `${person} werkt tot ${until} in de tent. ${quietAir(quietUntil)}`,
    afterWork: (person, quietUntil) => `De lucht komt tot rust na werk door ${person}. ${quietAir(quietUntil)}`,
    ventStep: (person, quietUntil) => `De lucht komt tot rust nadat ${person} de kier zette. ${quietAir(quietUntil)}`,
    workDone: 'Werk klaar',
    workDoneIn: (chamber) => `Werk klaar, tent gesloten: ${chamber}`,
  },
  service: {
    title: 'Regels buiten dienst',
    here: (names) => `Hier geen alarm voor: ${names.join(', ').toLowerCase()}.`,
    takenBy: (person, since) => `buiten dienst gesteld door ${person}, sinds ${since}`,
    takeTitle: 'Een regel buiten dienst stellen',
    hint: 'Hij geeft in deze tent geen alarm tot een beheerder hem terugzet: alleen voor reparaties.',
    rule: 'Regel',
    take: 'Buiten dienst stellen',
    taken: (rule) => `Buiten dienst: ${rule}`,
    return: 'Weer in dienst nemen',
    returnThis: (rule) => `Weer in dienst nemen: ${rule}`,
    returned: (rule) => `Weer in dienst: ${rule}`,
  },
};
