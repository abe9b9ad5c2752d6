// The next step of the opening, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const venting: SharedWords['venting'] = {
  open: (gap, settles) => `Open tot ${gap} %: ${settles}.`,
  close: (gap, settles) => `Sluit tot ${gap} %: ${settles}.`,
  settles: (humidity, plusMinus, minutes) =>
    `het zou in ongeveer ${minutes} min op ${humidity} ± ${plusMinus} %RV uit moeten komen`,
  partOfTheWay: {
    grace:
      'Dat is een deel van de weg: de hele stap in één keer zou de planten sneller drogen dan het profiel toestaat.',
    experience: 'Dat is een deel van de weg: hoe de lucht zich bij een wijdere kier gedraagt, is nog niet bekend.',
    certainty: 'Dat is een deel van de weg: bij een wijdere kier kan de lucht onder de ondergrens zakken.',
  },
  fixed: {
    'gap-never-changed':
      'De kier is nog niet veranderd, dus niets laat zien hoe snel de lucht ververst; zet hem iets open, noteer het en kijk over een half uur weer.',
    'no-house-air': 'De kaslucht is voor deze tijd niet bekend; hang een voeler in de kas.',
    saturated: 'De luchtvochtigheid stond aan het eind van het meetbereik, waar een daling niet te zien is.',
    'too-fast': 'De lucht kwam sneller tot rust dan de metingen elkaar opvolgen; laat de zender vaker sturen.',
    'too-slow':
      'De lucht was nog onderweg toen de tijd om was, zodat het tempo niet te zien is; laat de kier langer zo staan.',
    'no-decay':
      'De lucht was al tot rust vóór de eerste meting die telt, of bewoog nauwelijks; een grotere stap van de kier laat meer zien.',
    'two-paces':
      'De lucht bewoog in twee tempo’s, eerst snel en dan langzaam: drogende folie of een natte vloer verbergt de verversing. Een grotere stap laat meer zien.',
    'other-source':
      'Planten en folie gaven toen veel meer of minder vocht af (natte folie, bijvoorbeeld), dus het zegt nu niets.',
    'not-monotone':
      'Het berekende tempo daalt als de kier verder opengaat, dus iets anders dan de kier bewoog de lucht (wind, een ventilator, een notitie die niet klopt).',
    'fit-too-old':
      'De laatste verandering van de kier die iets laat zien is meer dan een dag oud; maak een kleine, noteer het en kijk over een half uur weer.',
    'already-there': 'De lucht is al binnen de grenzen van deze stap; laat de kier zo staan.',
    over: 'Het luchten is voorbij.',
    'on-hold': 'De partij is gepauzeerd: laat de kier zo staan en ga verder als de enten rechtop staan.',
    'no-step': 'Het plan gaat niet verder omlaag: laat de kier zo staan.',
  },
  readings: (found, needed) =>
    `Er volgen maar ${found} metingen en er zijn er ${needed} nodig; laat de kier langer zo staan, of laat de zender vaker sturen.`,
  uncertain: (percent) =>
    `Het tempo komt uit op ± ${percent} %, te onzeker om op te varen; een grotere stap of langer wachten laat meer zien.`,
  poorFit: (percent) =>
    `De luchtverversing verklaart maar ${percent} % van wat is gemeten; iets anders bewoog de luchtvochtigheid (nevelen, drogende folie, een voeler).`,
  tooFewGaps: (gap) =>
    `Alleen de kier van ${gap} % laat zijn tempo zien, en er zijn er twee nodig; verander de kier, noteer het en kijk over een half uur weer.`,
  limp: (acts) => `De enten zijn slap gemeld: ${acts}.`,
  limpActs: {
    closed: 'doe de tent dicht',
    closeTo: (gap) => `zet de kier op ${gap} %`,
    mist: 'nevel',
    hold: 'pauzeer de partij tot ze weer rechtop staan',
  },
  noAirNow: {
    chamber: 'Geen gezonde voeler in de tent geeft nu temperatuur en luchtvochtigheid.',
    house: 'De kaslucht is nu niet bekend; zonder voeler in de kas is geen kier te berekenen.',
  },
  stillSettling: (minutes) => `De lucht komt nog tot rust na de laatste verandering; kijk over ${minutes} min weer.`,
  doesNotMatch: (expected, measured) =>
    `Volgens de berekening zou de lucht bij deze kier op ${expected} %RV moeten staan, en ze staat op ${measured}; er is iets veranderd, dus ga op je oog af.`,
  houseTooWet: (humidity) =>
    `De kaslucht is te vochtig voor deze stap: bij de warmte van de tent heeft ze zelf ${humidity} %RV, en daar komt geen kier onder. Maak de kas eerst droger.`,
  houseTooDry: (gap, humidity) =>
    `De kaslucht is te droog voor deze stap: zelfs bij ${gap} %, de kleinste kier waarover iets te zeggen is, komt de lucht op ${humidity} %RV. Houd de tent dicht, of maak de kas eerst vochtiger.`,
  noNarrowerGap: 'Er is geen kleinere kier geprobeerd; doe de tent dicht, en nevel als de lucht te droog blijft.',
  noWiderGap:
    'De kier is zo wijd als te beoordelen is uit wat is geprobeerd; ga verder open op je oog, noteer het en kijk over een half uur weer.',
  noSureNarrowerGap:
    'Van geen kleinere kier is zeker genoeg dat hij boven de ondergrens blijft; doe de tent dicht, en nevel als de lucht te droog blijft.',
  noSureWiderGap:
    'Van geen kier is zeker genoeg dat hij boven de ondergrens blijft; ga op je oog open, beetje bij beetje, en noteer het: dat maakt ook de berekening beter.',
  driesTooFast: (grace) =>
    `Elke kier die helpt zou de lucht meer drogen dan de ${grace} %RV per uur die het profiel toestaat; laat de kier zo staan.`,
  farOff: 'Het luchten is nog meer dan een halve dag weg.',
  notYet: 'De lucht is waar het plan haar wil. De volgende kier wordt een uur voor de volgende stap berekend.',
  exchangeUnknown: (why) => `Hoe de lucht ververst, is nog niet bekend. ${why}`,
};
