// In Dutch: the frame round every page: head, navigation, connection, signing in, what goes wrong.

import { many } from '../../strings.ts';
import type { frame as english } from '../en/frame.ts';

export const frame: typeof english = {
  product: 'Takewell',
  skipToMain: 'Naar de pagina',
  menu: 'Menu',
  pageTitle: (page) => `${page} · Takewell`,
  nav: {
    overview: 'Tenten',
    alarms: 'Alarmen',
    batches: 'Partijen',
    profiles: 'Profielen',
    sensors: 'Sensoren',
    people: 'Mensen',
    settings: 'Instellingen',
    more: 'Meer',
    mine: 'Mijn meldingen, afmelden',
    mineOf: (name) => `${name}: mijn meldingen, afmelden`,
    open: (count) => `${many(count, 'alarm', 'alarmen')} niet bevestigd`,
  },
  demo: 'Demogegevens, verzonnen',
  live: {
    connecting: 'verbinden',
    none: 'geen verbinding',
    fresh: 'actueel',
    heard: (age) => `stand van ${age}`,
    lost: (time, age) =>
      `Geen verbinding. Wat je ziet is van ${time}, ${age} oud. Het haalt zichzelf bij zodra de verbinding terug is.`,
    underAMinute: 'minder dan een minuut',
    lostShort: (age) => `geen verbinding, ${age} oud`,
    neverHeard: 'Nog geen verbinding met de dienst. Kijk of dit toestel in hetzelfde netwerk zit.',
    back: 'De verbinding is terug; alles is bijgewerkt.',
  },
  printed: (site, time) => (site === '' ? `Stand van ${time}` : `${site}, stand van ${time}`),
  version: {
    newer: 'Er is een nieuwere versie van Takewell.',
    load: 'Nu laden',
  },
  problems: {
    unreachable: 'De dienst is niet bereikbaar. Kijk naar het netwerk; wat je typte blijft staan.',
    timeOut: 'De dienst deed te lang over het antwoord. Probeer het opnieuw.',
    badAnswer: 'De dienst antwoordde iets wat deze pagina niet begrijpt. Laad de pagina opnieuw.',
    notAllowed: 'Je rol staat dit niet toe. Vraag een beheerder.',
    notFound: 'Dat bestaat niet meer. Laad de pagina opnieuw.',
    tooMany: 'Te veel pogingen. Wacht een minuut en probeer het dan opnieuw.',
    server: 'De dienst had een probleem. Er is niets veranderd; probeer het over een minuut opnieuw.',
    signInAgain: 'Je bent afgemeld. Meld je opnieuw aan.',
    seeFields: 'Verander wat gemarkeerd is; verder gaat niets verloren.',
    again: 'Opnieuw proberen',
    loading: 'Laden…',
  },
  notFound: {
    title: 'Hier is niets',
    text: 'Op dit adres is geen pagina.',
    home: 'Naar de tenten',
  },
  signIn: {
    title: 'Aanmelden',
    name: 'Naam',
    password: 'Wachtwoord',
    act: 'Aanmelden',
    needsSetup: 'Er is nog geen beheerder. Open het installatieadres dat de dienst bij de eerste start toonde.',
  },
  language: {
    label: 'Taal',
  },
};
