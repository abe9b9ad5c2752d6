// In Dutch: the page of alarms.

import { many } from '../../strings.ts';
import type { alarms as english } from '../en/alarms.ts';

export const alarms: typeof english = {
  alarms: {
    title: 'Alarmen',
    ofService: 'Alarm van Takewell zelf',
    active: 'Van kracht',
    recent: 'Eerder',
    showAll: (count) => `Toon alle ${count}`,
    noneActive: 'Er is geen alarm van kracht.',
    noneRecent: 'Er is nog geen alarm geweest.',
    before: 'Toon die daarvoor',
    loading: 'De alarmen worden opgehaald…',
    chamberBatch: (chamber, batch) => `${chamber}, partij ${batch}`,
    summary: (open, taken, quiet) => {
      const parts = [
        ...(open === 0 ? [] : [`${open} niet bevestigd`]),
        ...(taken === 0 ? [] : [`${taken} bevestigd of uitgesteld`]),
        ...(quiet === 0 ? [] : [`${quiet} nu stil`]),
      ];
      return `${parts.join(', ')}.`;
    },
    newAlarm: (chamber, sentence) => `Alarm in ${chamber}: ${sentence}`,
    over: (chamber) => `Alarm in ${chamber} is voorbij`,
  },
  howOften: {
    title: 'Hoe vaak',
    caption: 'Alarmen van de laatste 30 dagen naast hun streefwaarden',
    columns: { measure: 'Laatste 30 dagen', found: 'Gevonden', target: 'Streefwaarde' },
    none: (span) => `Er was geen alarm in de laatste ${span}.`,
    count: (count, span) => `${many(count, 'alarm', 'alarmen')} in ${span}.`,
    days: (count) => many(count, 'dag', 'dagen'),
    hours: (count) => many(count, 'uur', 'uur'),
    tooEarly: 'nog te vroeg om te zeggen',
    within: 'Dat is binnen de streefwaarden.',
    many: 'Dat is meer dan goed is: kijk wat het vaakst komt.',
    tooMany: 'Dat is meer dan iemand kan beantwoorden: kijk wat het vaakst komt.',
    tooStale: 'Te veel alarmen stonden langer dan een dag: los ze op, of stel ze met een reden uit.',
    someChatter: 'Sommige ratelen, en dat leert mensen om niet te luisteren.',
    aDay: 'Alarmen per dag',
    aDayTarget: (acceptable, most) => `${acceptable} of minder, hoogstens ${most}`,
    busiestDay: 'Op de drukste dag',
    shares: { low: 'Lage prioriteit', medium: 'Middelste prioriteit', high: 'Hoog en kritiek' },
    stale: 'Langer dan een dag van kracht, op de ergste dag',
    chattering: 'Ratelend',
    percent: (percent) => `${percent} %`,
    about: (percent) => `ongeveer ${percent}`,
    fewerThan: (count) => `minder dan ${count}`,
    atMost: (count) => `hoogstens ${count}`,
    noneAllowed: 'geen',
    chatteringTitle: 'Wat ratelt',
    mostTitle: 'Wat het vaakst komt',
    source: (chamber, rule, alarms) => `${chamber}: ${rule.toLowerCase()} (${many(alarms, 'alarm', 'alarmen')})`,
    chatteringAdvice: 'Het begon drie keer binnen een minuut: kijk naar de voeler, zijn kabel en waar hij hangt.',
    goneChamber: 'Een tent die er niet meer is',
    basis:
      'Streefwaarden van IEC 62682 voor alle alarmen die één mens beantwoordt. Ze beoordelen de alarmen, niet de mensen.',
  },
};
