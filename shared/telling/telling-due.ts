// Who is told of what now, and is the siren to sound? The pure half of alerting: it decides from alarms, notices written so far, crew and
// time; delivering is the server's. A flood, an outage and a chamber with several alarms are told in fewer notices than they have alarms.
import type { Alarm, Priority } from '../alarms/alarm.ts';
import type { Effect } from '../alarms/watch-state.ts';
import { MINUTE_MS } from '../units.ts';
import { askingDue, type Telling, waitedMs } from './asking-due.ts';
import { changeDue } from './change-due.ts';
import type { Crew, CrewMember } from './crew.ts';
import { askingOf, asksForSiren, type Escalation } from './escalation.ts';
import type { NoticeDraft } from './notice.ts';
import { draftNotice, isAskingNotice } from './notice-step.ts';

export type AlarmChanged = Extract<Effect, { type: 'alarm-changed' }>;

export interface TellingInput {
  /** Every alarm that is not back to normal, as this turn leaves it. */
  readonly alarms: readonly Alarm[];
  /** What this turn changed. */
  readonly changes: readonly AlarmChanged[];
  /** Notices of an alarm so far, in order of time. */
  readonly toldOf: (alarmId: string) => readonly NoticeDraft[];
  readonly crew: Crew;
  readonly escalation: Escalation;
  readonly nowMs: number;
  /** True for an instant in a flood: its notice stands for all that began then but the critical ones. */
  readonly isFloodAt: (ms: number) => boolean;
  /** A summary of an outage is being written: all but critical heat wait for it. */
  readonly isHeld: boolean;
  /** When the newest outage was told of: it stood for all that asked by then but critical heat; null = never. */
  readonly outageToldMs: number | null;
}

export interface TellingDecision {
  readonly notices: readonly NoticeDraft[];
  /** Alarms that the siren sounds for, the worst first; none = off. */
  readonly sirenFor: readonly Alarm[];
}

/** The notices due at `nowMs`. Deciding twice on the same state writes the same ids. */
export function tellingDue(input: TellingInput): TellingDecision {
  const { crew, escalation, nowMs, toldOf } = input;
  const notices = input.changes.flatMap((change) => changeDue(change, toldOf(change.alarm.id), crew));
  const asking = askedOneByOne(input);
  for (const alarm of asking) {
    const countFromMs = countFrom(alarm, input);
    const told = toldOf(alarm.id);
    const due = askingDue({ alarm, told, crew, escalation, nowMs, countFromMs });
    const isGrouped = groupedBy(alarm, input, notices);
    for (const { to, step } of due.filter((one) => !isGrouped(one)))
      notices.push(...targetsOf(to, crew).map((target) => draftNotice(alarm, step, target, nowMs)));
  }
  const waited = (alarm: Alarm) => waitedMs({ alarm, nowMs, countFromMs: countFrom(alarm, input) });
  return { notices, sirenFor: asking.filter((alarm) => asksForSiren(alarm, escalation, waited(alarm))) };
}

/** The notice to everybody on duty and to the programs that stands for many alarms; `alarm` is the one it is kept with. */
export function summaryNotices(kind: 'flood' | 'outage', alarm: Alarm, crew: Crew, nowMs: number): NoticeDraft[] {
  const onDuty = crew.people.filter((person) => person.isOnDuty);
  const targets = [...onDuty.flatMap((person) => person.targets), ...crew.programs];
  const step = { kind, mark: nowMs.toString(36) };
  return targets.map((target) => ({ ...draftNotice(alarm, step, target, nowMs), urgent: true }));
}

const order: readonly Priority[] = ['critical', 'high', 'medium', 'low'];

/** Unacknowledged alarms that are told by themselves now, the worst first, then what asks longest. */
function askedOneByOne(input: TellingInput): Alarm[] {
  const { alarms, isHeld, outageToldMs, escalation, nowMs } = input;
  const asking = alarms
    .filter((alarm) => alarm.state === 'unacknowledged')
    .sort((a, b) => order.indexOf(a.priority) - order.indexOf(b.priority) || askingOf(a).sinceMs - askingOf(b).sinceMs);
  const covered = asking.filter((alarm) => isInFlood(alarm, input));
  const first = isSomebodyThere(input) ? undefined : covered[0];
  const patienceMs = escalation.nextAfterMinutes * MINUTE_MS;
  return asking.filter((alarm) => {
    if (isCriticalHeat(alarm)) return true;
    if (isHeld) return false;
    const isSummed = outageToldMs !== null && askingOf(alarm).sinceMs <= outageToldMs;
    if (isSummed && waitedMs({ alarm, nowMs, countFromMs: outageToldMs }) < patienceMs) return false;
    // Of a flood the worst alone goes on to ask, once its notice has waited long enough.
    return !covered.includes(alarm) || (alarm === first && waitedMs({ alarm, nowMs }) >= patienceMs);
  });
}

function isCriticalHeat({ rule, priority }: Alarm): boolean {
  return rule === 'heat' && priority === 'critical';
}

function isInFlood({ priority, occurredMs }: Alarm, { isFloodAt, nowMs }: TellingInput): boolean {
  return priority !== 'critical' && (isFloodAt(occurredMs) || isFloodAt(nowMs));
}

/** Somebody who has taken one alarm of a flood is at work on it. */
function isSomebodyThere(input: TellingInput): boolean {
  return input.alarms.some((alarm) => alarm.state === 'acknowledged' && isInFlood(alarm, input));
}

function countFrom(alarm: Alarm, { outageToldMs }: TellingInput): number | null {
  return isCriticalHeat(alarm) ? null : outageToldMs;
}

/** Ours: so long a notice of a chamber stands for what else is wrong in it and is not worse. */
const GROUP_MS = 5 * MINUTE_MS;

/** Tells what can wait because the person has just been told of the same chamber. Critical alarms and programs never wait. */
function groupedBy(alarm: Alarm, { alarms, toldOf, nowMs }: TellingInput, drafts: readonly NoticeDraft[]) {
  const isNoWorse = (other: Alarm) => order.indexOf(other.priority) <= order.indexOf(alarm.priority);
  const neighbours = alarms.filter((one) => one.chamberId === alarm.chamberId && one.id !== alarm.id && isNoWorse(one));
  const ids = new Set(neighbours.map(({ id }) => id));
  const recent = [
    ...neighbours.flatMap(({ id }) => toldOf(id)),
    ...drafts.filter((one) => ids.has(one.alarmId)),
  ].filter((one) => isAskingNotice(one) && Math.abs(nowMs - one.decidedMs) < GROUP_MS);
  return ({ to }: Telling) =>
    alarm.priority !== 'critical' && to !== 'programs' && recent.some(({ personId }) => personId === to.id);
}

function targetsOf(to: CrewMember | 'programs', crew: Crew): Crew['programs'] {
  return to === 'programs' ? crew.programs : to.targets;
}
