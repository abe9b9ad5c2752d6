// What alarms say, in Dutch.

import type { SharedWords } from '../shared-words.ts';
import { service } from './service.ts';

const advice: SharedWords['alarms']['advice'] = {
  ...service.advice,
  heat: 'Nu schaduwen. Zet de kier een handbreed open en nevel de folie.',
  cold: 'Maak de kier dicht en kijk naar de verwarming van de kas.',
  dry: 'Nu nevelen; houd de kier zo klein als de warmte toelaat. Kijk of de enten staan.',
  wet: 'Zet de kier op de stap van vandaag, als de enten rechtop staan.',
  'silent-probe': 'Kijk naar de voeler: stroom, kabel, water in de stekker.',
  'silent-chamber': 'Ga bij de tent kijken: niemand meet daar nu. Zorg daarna voor de voeler.',
  'heat-ahead': 'Nu schaduwen, voordat het heet wordt; kijk of de vernevelaar loopt.',
  vpd: 'Nevel licht en zoek een open naad; laat het niet warmer worden.',
  'suspect-probe': 'Houd een ander instrument naast de voeler; is hij nat, laat hem drogen voordat je hem vertrouwt.',
  'check-overdue': 'Ga kijken en beantwoord dan de controle.',
  'check-failed': 'Ga kijken en doe wat het plan bij deze controle zegt.',
  'plan-late': 'Zet de kier op de stap van vandaag als de enten rechtop staan; zo niet, pauzeer het plan.',
};

export const alarms: SharedWords['alarms'] = {
  hot: (value) => `Heet: ${value}`,
  farTooHot: (value) => `Veel te heet: ${value}`,
  cold: (value) => `Koud: ${value}`,
  drying: (value) => `Droogt uit: ${value}`,
  farTooDry: (value) => `Veel te droog: ${value}`,
  stillWet: (value) => `Nog nat: ${value}`,
  drawsWater: (value) => `Lucht trekt te veel water: ${value}`,
  ventingLate: (value) => `Laat met luchten: nog ${value}`,
  heatAhead: (value) => `Hitte op komst: ${value}`,
  probeSilent: (span) => `Voeler zwijgt al ${span}`,
  chamberSilent: (span) => `Al ${span} geen temperatuur die te vertrouwen is`,
  probeInDoubt: 'Voeler in twijfel',
  probeInDoubtSays: (value) => `Voeler in twijfel: hij meldt ${value}`,
  checkOverdue: 'Controle te laat',
  checkAnsweredNo: 'Controle met nee beantwoord',
  limitFor: (limit, span) => `grens ${limit}, al ${span}`,
  lowLimitFor: (limit, span) => `ondergrens ${limit}, al ${span}`,
  highLimitFor: (limit, span) => `bovengrens ${limit}, al ${span}`,
  hotFor: (limit, span) => `boven ${limit}; al ${span} heet`,
  dryingFor: (limit, span) => `onder ${limit}; droogt al ${span} uit`,
  doubtedFor: (span) => `al ${span}`,
  notBelievedFor: (span) => `al ${span} niet geloofd`,
  overdueFor: (span, question) => `al ${span}: “${question}”`,
  withMore: (question, count) => `${question} (en nog ${count})`,
  answeredAgo: (span, question) => `${span} geleden: “${question}”`,
  over: (rule) => `${rule} is voorbij`,
  lasted: (span) => `het duurde ${span}`,
  lastedWithPeak: (span, peak) => `het duurde ${span}, op zijn ergst ${peak}`,
  mayPass: (limit, minutes) => `kan over ${minutes} min boven ${limit} zijn`,
  notKnown: 'niet bekend',
  advice,
};
