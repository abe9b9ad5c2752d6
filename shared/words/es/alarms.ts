// What alarms say, in Spanish.

import type { SharedWords } from '../shared-words.ts';
import { service } from './service.ts';

const advice: SharedWords['alarms']['advice'] = {
  ...service.advice,
  heat: 'Sombree ya. Abra un palmo y nebulice el plástico.',
  cold: 'Cierre la abertura y revise la calefacción del invernadero.',
  dry: 'Nebulice ya; abra tan poco como el calor permita. Mire si las plantas están erguidas.',
  wet: 'Abra hasta el paso de hoy, si las plantas están erguidas.',
  'silent-probe': 'Mire la sonda: corriente, cable, agua en el conector.',
  'silent-chamber': 'Vaya al túnel: nadie lo está midiendo. Después ocúpese de la sonda.',
  'heat-ahead': 'Sombree ya, antes de que haga calor; mire si funciona el nebulizador.',
  vpd: 'Nebulice un poco y busque una junta abierta; que no suba más la temperatura.',
  'suspect-probe': 'Ponga otro instrumento al lado de la sonda; si está mojada, déjela secar antes de fiarse.',
  'check-overdue': 'Vaya a mirar y responda al control.',
  'check-failed': 'Vaya a ver y haga lo que el plan dice para este control.',
  'plan-late': 'Abra hasta el paso de hoy si las plantas están erguidas; si no, pause el plan.',
};

export const alarms: SharedWords['alarms'] = {
  hot: (value) => `Calor: ${value}`,
  farTooHot: (value) => `Demasiado calor: ${value}`,
  cold: (value) => `Frío: ${value}`,
  drying: (value) => `Se seca: ${value}`,
  farTooDry: (value) => `Demasiado seco: ${value}`,
  stillWet: (value) => `Sigue húmedo: ${value}`,
  drawsWater: (value) => `El aire quita demasiada agua: ${value}`,
  ventingLate: (value) => `Ventilación con retraso: aún ${value}`,
  heatAhead: (value) => `Calor a la vista: ${value}`,
  probeSilent: (span) => `Sonda sin señal desde hace ${span}`,
  chamberSilent: (span) => `Ninguna temperatura fiable desde hace ${span}`,
  probeInDoubt: 'Sonda dudosa',
  probeInDoubtSays: (value) => `Sonda dudosa: dice ${value}`,
  checkOverdue: 'Control pendiente',
  checkAnsweredNo: 'Control contestado con no',
  limitFor: (limit, span) => `límite ${limit} desde hace ${span}`,
  lowLimitFor: (limit, span) => `límite inferior ${limit} desde hace ${span}`,
  highLimitFor: (limit, span) => `límite superior ${limit} desde hace ${span}`,
  hotFor: (limit, span) => `sobre ${limit}; con calor desde hace ${span}`,
  dryingFor: (limit, span) => `bajo ${limit}; secándose desde hace ${span}`,
  doubtedFor: (span) => `desde hace ${span}`,
  notBelievedFor: (span) => `no se la cree desde hace ${span}`,
  overdueFor: (span, question) => `desde hace ${span}: «${question}»`,
  withMore: (question, count) => `${question} (y ${count} más)`,
  answeredAgo: (span, question) => `hace ${span}: «${question}»`,
  over: (rule) => `Terminó: ${rule.toLowerCase()}`,
  lasted: (span) => `duró ${span}`,
  lastedWithPeak: (span, peak) => `duró ${span}, ${peak} en el peor momento`,
  mayPass: (limit, minutes) => `puede pasar de ${limit} en ${minutes} min`,
  notKnown: 'no se sabe',
  advice,
};
