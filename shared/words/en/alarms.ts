// What alarms say, in English: what and how far, and what to do first. Values come in with their unit, limits without.

import type { RuleId } from '../../alarms/alarm.ts';
import { service } from './service.ts';

const advice: Record<RuleId, string> = {
  ...service.advice,
  heat: 'Shade now. Open the gap a hand’s width and mist the film.',
  cold: 'Close the gap and check the heating of the house.',
  // A hot tent may have to stay open: then mist is what is left.
  dry: 'Mist now; keep the gap as small as the heat allows. Look whether the scions stand.',
  wet: 'Open the gap to the step of today, if the scions stand erect.',
  'silent-probe': 'Look at the probe: power, cable, water in the plug.',
  'silent-chamber': 'Go and look at the tent: nobody is measuring it. Then see to the probe.',
  'heat-ahead': 'Shade now, before it gets hot; look whether the fogger runs.',
  vpd: 'Mist lightly and look for an open seam; do not let it get hotter.',
  'suspect-probe': 'Hold another instrument beside the probe; if it is wet, let it dry before you trust it.',
  'check-overdue': 'Go and look, then answer the check.',
  'check-failed': 'Go and see, and do what the plan says for this check.',
  'plan-late': 'Open the gap to the step of today if the scions stand erect; if they do not, hold the plan.',
};

export const alarms = {
  hot: (value: string) => `Hot: ${value}`,
  farTooHot: (value: string) => `Far too hot: ${value}`,
  cold: (value: string) => `Cold: ${value}`,
  drying: (value: string) => `Drying: ${value}`,
  farTooDry: (value: string) => `Far too dry: ${value}`,
  stillWet: (value: string) => `Still wet: ${value}`,
  drawsWater: (value: string) => `Air draws too much water: ${value}`,
  ventingLate: (value: string) => `Venting is late: still ${value}`,
  heatAhead: (value: string) => `Heat ahead: ${value}`,
  /** The warned-of heat is there, and its own alarm has not begun yet. */
  heatHere: (value: string) => `Heat has come: ${value}`,
  aboveFor: (limit: string, span: string) => `above ${limit} for ${span}`,
  aboveAlready: (limit: string) => `above ${limit} already`,
  probeSilent: (span: string) => `Probe silent for ${span}`,
  chamberSilent: (span: string) => `No temperature to trust for ${span}`,
  probeInDoubt: 'Probe in doubt',
  probeInDoubtSays: (value: string) => `Probe in doubt: it says ${value}`,
  checkOverdue: 'Check overdue',
  checkAnsweredNo: 'Check answered no',
  limitFor: (limit: string, span: string) => `limit ${limit} for ${span}`,
  lowLimitFor: (limit: string, span: string) => `low limit ${limit} for ${span}`,
  highLimitFor: (limit: string, span: string) => `high limit ${limit} for ${span}`,
  hotFor: (limit: string, span: string) => `above ${limit}; hot for ${span}`,
  dryingFor: (limit: string, span: string) => `below ${limit}; drying for ${span}`,
  /** Of an alarm that stands although its value is inside again. */
  backBelow: (limit: string, span: string) => `back below ${limit} but not settled, ${span} so far`,
  backAbove: (limit: string, span: string) => `back above ${limit} but not settled, ${span} so far`,
  doubtedFor: (span: string) => `for ${span}`,
  notBelievedFor: (span: string) => `not believed for ${span}`,
  overdueFor: (span: string, question: string) => `for ${span}: “${question}”`,
  withMore: (question: string, count: number) => `${question} (and ${count} more)`,
  answeredAgo: (span: string, question: string) => `${span} ago: “${question}”`,
  over: (rule: string) => `${rule} is over`,
  lasted: (span: string) => `it lasted ${span}`,
  lastedWithPeak: (span: string, peak: string) => `it lasted ${span}, ${peak} at worst`,
  mayPass: (limit: string, minutes: number) => `may be past ${limit} in ${minutes} min`,
  notKnown: 'not known',
  advice,
};
