// The checks of the shipped profiles, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const checks: SharedWords['checks'] = {
  airReady: {
    question: (temperature, humidity) => `Is de lucht in de entruimte en in de tent ${temperature} en ${humidity}?`,
    ifNo: 'Wacht met enten tot de lucht goed is: verwarm of schaduw de ruimte, maak de vloer van de tent nat.',
  },
  filmAndFloorDamp: {
    question: 'Zijn de folie en de vloer van de tent vochtig?',
    ifNo: 'Maak vloer en folie nat voordat de eerste tray erin gaat; maak de trays zelf niet drijfnat.',
  },
  newBlade: {
    question: 'Wordt voor elke tray een nieuw mesje genomen?',
    ifNo: 'Zet op elke plek een doos mesjes en een bakje voor de gebruikte, en wissel vóór de volgende tray.',
  },
  handsAndTools: {
    question: 'Zijn handen en gereedschap ontsmet?',
    ifNo: 'Stop en ontsmet volgens het etiket; opnieuw na elke pauze.',
  },
  noTobacco: {
    question: 'Blijft tabak weg van planten, handen en kleding?',
    ifNo: 'Was de handen, neem nieuwe handschoenen en een schone schort: tabak kan een virus overbrengen.',
  },
  noDirectSun: {
    question: 'Staat de tent uit de directe zon?',
    ifNo: 'Sluit het scherm of hang schaduwdoek op voordat de eerste tray erin gaat.',
  },
  filmWet: {
    question: 'Is de folie aan de binnenkant nat?',
    ifNo: 'Zoek een open naad, maak vloer en folie nat, sluit weer en kijk over een uur nog eens.',
  },
  scionsErect: {
    question: 'Staan de enten rechtop?',
    ifNo: 'Sluit de tent, nevel licht en pauzeer het plan tot ze staan.',
  },
  lookThroughGap: {
    question: 'Kijk door een kleine kier en sluit weer: staan de enten rechtop en fris?',
    ifNo: 'Laat wat verse lucht in als het muf is en sluit weer; hangen ze slap, nevel dan en pauzeer het plan.',
  },
  erectAfterStep: {
    question: 'Staan de enten nog rechtop, een uur na deze stap van het luchten?',
    ifNo: 'Maak de kier weer dicht, nevel licht en pauzeer het plan.',
  },
  erectWhenOpen: {
    question: 'Staan de enten rechtop terwijl de tent helemaal open is?',
    ifNo: 'Sluit de tent voor een deel, nevel licht en pauzeer het plan.',
  },
  filmOffBeforeSun: {
    question: 'Is de folie eraf voordat er zon bij de planten komt?',
    ifNo: 'Schaduw de tent meteen: onder folie in de zon koken de planten.',
  },
  feed: {
    question: 'Hebben de planten voeding gekregen?',
    ifNo: 'Geef nu water met voeding en zoek trays die zijn overgeslagen.',
  },
  reportedLimp: {
    question: 'Staan de enten rechtop?',
    ifNo: 'Maak de kier dicht, nevel licht en pauzeer het plan.',
  },
  reportedDry: {
    question: 'Is de folie aan de binnenkant nat?',
    ifNo: 'Zoek een open naad, maak vloer en folie nat.',
  },
};
