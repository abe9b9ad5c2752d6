// The words of alarms: states of IEC 62682, priorities, rules, and one occurrence of an alarm as it is stored and shown.
import type { Expected } from '../forecast/heat-ahead.ts';
import type { ServiceFacts } from './service-facts.ts';

export const alarmStates = [
  'normal',
  'unacknowledged',
  'acknowledged',
  'returned-unacknowledged',
  'shelved',
  'suppressed',
  'out-of-service',
] as const;
export type AlarmState = (typeof alarmStates)[number];

export const priorities = ['critical', 'high', 'medium', 'low'] as const;
export type Priority = (typeof priorities)[number];

/** Rules about a chamber. */
export const chamberRuleIds = [
  'heat',
  'cold',
  'dry',
  'wet',
  'silent-probe',
  'silent-chamber',
  'vpd',
  'suspect-probe',
  'check-overdue',
  'check-failed',
  'plan-late',
  'heat-ahead',
] as const;

/** Rules about the service itself: the watcher watched. */
export const serviceRuleIds = [
  'broker-lost',
  'disk-nearly-full',
  'clock-jumped',
  'restarted',
  'delivery-failing',
  'nobody-on-duty',
  'nobody-reachable',
] as const;
export const ruleIds = [...chamberRuleIds, ...serviceRuleIds] as const;
export type ChamberRuleId = (typeof chamberRuleIds)[number];
export type ServiceRuleId = (typeof serviceRuleIds)[number];
export type RuleId = (typeof ruleIds)[number];

/** True for a rule about the service itself. */
export function isServiceRule(rule: RuleId): rule is ServiceRuleId {
  return (serviceRuleIds as readonly RuleId[]).includes(rule);
}

/** Rules about something that happens at an instant: there is nothing to be over. Beside the names, so that a page says them without the rules. */
export const instantRules: readonly RuleId[] = ['clock-jumped', 'restarted'];

/** 0 = in order, 1 = beyond the limit, 2 = beyond the outer limit (high-high, low-low). */
export type Level = 0 | 1 | 2;

/** What an alarm about a check is about, in the profile's own words; of one about a person, their name as the question. */
export interface AlarmAbout {
  /** Tells one alarm of its rule from another. */
  readonly id: string;
  readonly question: string;
  /** What to do first. */
  readonly ifNo: string;
  /** So many more checks fell due with it; left out for none. */
  readonly more?: number | undefined;
}

/** What makes an alarm ask: that it began (or is back), that it got worse, or that it was taken and stands still. */
export interface Asking {
  readonly sinceMs: number;
  readonly kind: 'raised' | 'escalated' | 'asked-anew';
}

/** Where alarms of the service itself stand, in place of a chamber; no chamber can have this id. */
export const SERVICE_ID = 'takewell';
/** Its name; the same in every language. */
export const SERVICE_NAME = 'Takewell';

/** One occurrence of an alarm, from the moment it is annunciated until it is back to normal. Times are ms since the epoch. */
export interface Alarm {
  readonly id: string;
  readonly chamberId: string;
  readonly batchId: string | null;
  readonly rule: RuleId;
  /** Set for rules about one probe. */
  readonly probeId: string | null;
  /** Set for rules about checks. */
  readonly about?: AlarmAbout;
  readonly state: AlarmState;
  /** Level reached by the condition now; 0 when it has cleared. */
  readonly level: Level;
  /** Highest priority this occurrence has had. */
  readonly priority: Priority;
  /** When the condition that stands, or stood last, began: before the on-delay. */
  readonly sinceMs: number;
  /** When it was first annunciated, after the on-delay. */
  readonly occurredMs: number;
  /** The limit of the level that stands, or stood last. */
  readonly limit: number | null;
  /** The value at the newest change of the alarm. */
  readonly value: number | null;
  /** The value furthest from the limit in the whole occurrence, on-delay included, and when. */
  readonly peak: number | null;
  readonly peakMs: number | null;
  /** Since when, and why, it asks somebody to take it, or asked last. */
  readonly asking?: Asking;
  readonly acknowledgedMs: number | null;
  readonly acknowledgedBy: string | null;
  readonly returnedMs: number | null;
  readonly shelvedUntilMs: number | null;
  readonly shelvedReason: string | null;
  /** Of a warning only: when its limit is expected to be passed, as seen at the newest peak. */
  readonly expected?: Expected;
  /** Of an alarm of the service itself only: what its sentence needs beside numbers. */
  readonly service?: ServiceFacts;
}
