// Names of stages, states, priorities, roles and rules, in English.

import type { AlarmState, Priority, RuleId } from '../../alarms/alarm.ts';
import type { StageName } from '../../healing/profile.ts';
import { service } from './service.ts';

type Role = 'viewer' | 'crew' | 'manager';

const stages: Record<StageName, string> = {
  loading: 'loading',
  closed: 'closed',
  venting: 'venting',
  hardening: 'hardening',
};

const priorities: Record<Priority, string> = { critical: 'critical', high: 'high', medium: 'medium', low: 'low' };

const states: Record<AlarmState, string> = {
  normal: 'over',
  unacknowledged: 'not acknowledged',
  acknowledged: 'acknowledged',
  'returned-unacknowledged': 'over, not acknowledged',
  shelved: 'shelved',
  suppressed: 'suppressed',
  'out-of-service': 'out of service',
};

const roles: Record<Role, string> = { viewer: 'viewer', crew: 'crew', manager: 'manager' };

const rules: Record<RuleId, string> = {
  ...service.names,
  heat: 'Heat',
  cold: 'Cold',
  dry: 'Dryness',
  wet: 'Wetness',
  'silent-probe': 'Probe silence',
  'silent-chamber': 'Chamber silence',
  'heat-ahead': 'Heat ahead',
  vpd: 'Vapour deficit',
  'suspect-probe': 'Probe doubt',
  'check-overdue': 'Overdue check',
  'check-failed': 'Bad check',
  'plan-late': 'Late venting',
};

export const names = { stages, priorities, states, roles, rules };
