// In English: the names of what is chosen from: stages, log entries, rules, priorities.
import type { RuleId } from '../../../shared/alarms/alarm.ts';
import type { LogEntry } from '../../../shared/api/log-entry.ts';
import { names as shared } from '../../../shared/words/en/names.ts';

const logKinds: Record<LogEntry['kind'], string> = {
  mist: 'Misted',
  gap: 'Gap set',
  limp: 'Plants limp',
  erect: 'Plants erect',
  'film-wet': 'Film wet',
  'film-dry': 'Film dry',
  working: 'Working in the tent',
  'work-done': 'Work done, tent closed',
  note: 'Note',
  opened: 'Batch opened',
  closed: 'Chamber closed',
  hold: 'Held',
  resume: 'Resumed',
  'moved-on': 'Moved on',
  check: 'Check answered',
  corrected: 'Corrected',
  finished: 'Batch finished',
};

const rules: Record<RuleId, string> = {
  heat: 'Too hot',
  cold: 'Too cold',
  dry: 'Too dry',
  wet: 'Too wet',
  'silent-probe': 'A probe is silent',
  'silent-chamber': 'The whole chamber is silent',
  vpd: 'Drying power outside its limits',
  'suspect-probe': 'A probe is doubtful',
  'check-overdue': 'Check missed',
  'check-failed': 'Check answered no',
  'plan-late': 'Venting is late',
  'heat-ahead': 'Heat is coming',
  'broker-lost': 'No readings come in',
  'disk-nearly-full': 'The disk is nearly full',
  'clock-jumped': 'The clock has jumped',
  restarted: 'Back after a gap',
  'delivery-failing': 'Alerts do not reach somebody',
  'nobody-on-duty': 'Nobody is on duty',
  'nobody-reachable': 'Alerts reach nobody',
};

export const names = {
  stages: shared.stages,
  logKinds,
  rules,
  priorities: shared.priorities,
};
