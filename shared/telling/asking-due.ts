// Whom an alarm that nobody has taken asks at an instant: those on duty, then the next person, then everyone, and again. It decides from the
// alarm, what was written of it so far, the crew and the time; from nothing else, so that a restart changes nothing.
import type { Alarm } from '../alarms/alarm.ts';
import { MINUTE_MS } from '../units.ts';
import type { Crew, CrewMember } from './crew.ts';
import { askingOf, type Escalation, isPressing, repeatDueMs } from './escalation.ts';
import type { NoticeDraft, NoticeKind } from './notice.ts';
import { askingStep, isOfAsking, type NoticeStep } from './notice-step.ts';

export interface AskingCase {
  readonly alarm: Alarm;
  /** All notices of this alarm so far. */
  readonly told: readonly NoticeDraft[];
  readonly crew: Crew;
  readonly escalation: Escalation;
  readonly nowMs: number;
  /** An instant after which the waiting counts: what a summary told of begins with the summary. */
  readonly countFromMs?: number | null;
}

/** One person, or the programs, to be told one thing. */
export interface Telling {
  readonly to: CrewMember | 'programs';
  readonly step: NoticeStep;
}

/** What is due of an unacknowledged alarm; empty for one that is not, and for a `low` one of a chamber, which waits on the screen. */
export function askingDue(one: AskingCase): Telling[] {
  const { alarm, told } = one;
  if (alarm.state !== 'unacknowledged') return [];
  const asking = askingOf(alarm);
  const asked = told.filter((notice) => isOfAsking(notice, asking.sinceMs));
  const state: Asked = { ...one, asked, fromMs: waitsSince(one), elapsedMs: waitedMs(one), asking };
  return [...programsDue(state), ...peopleDue(state), ...repeatsDue(state)];
}

/** How long the alarm has waited for somebody, ms. A clock set back: no time has passed until the watch asks anew. */
export function waitedMs(one: Pick<AskingCase, 'alarm' | 'nowMs' | 'countFromMs'>): number {
  return Math.max(0, one.nowMs - waitsSince(one));
}

function waitsSince({ alarm, countFromMs }: Pick<AskingCase, 'alarm' | 'countFromMs'>): number {
  return Math.max(askingOf(alarm).sinceMs, countFromMs ?? -Infinity);
}

interface Asked extends AskingCase {
  readonly asking: NonNullable<Alarm['asking']>;
  /** What was told since it asks. */
  readonly asked: readonly NoticeDraft[];
  readonly fromMs: number;
  readonly elapsedMs: number;
}

/** Programs are told when it begins to ask, once: they do not fall asleep. */
function programsDue({ alarm, asked, crew, asking }: Asked): Telling[] {
  const isKnown = asked.some(({ personId }) => personId === null);
  if (isKnown || crew.programs.length === 0 || alarm.priority === 'low') return [];
  return [{ to: 'programs', step: askingStep(asking.kind, asking.sinceMs) }];
}

function peopleDue(state: Asked): Telling[] {
  const { alarm, asking, asked } = state;
  const chosen = chosenPeople(state).filter(({ person }) => !isAsked(state, person));
  const isFirst = !asked.some(({ personId }) => personId !== null);
  return chosen.flatMap(({ person, step }) => {
    if (person.isQuiet && !isPressing(alarm.priority)) return [];
    const kind: NoticeKind = isFirst ? asking.kind : 'passed-on';
    return [{ to: person, step: askingStep(kind, asking.sinceMs, step) }];
  });
}

interface Chosen {
  readonly person: CrewMember;
  /** Empty = on duty. */
  readonly step: '' | 'next' | 'all';
}

/** Everybody who should know by now, each once. */
function chosenPeople(state: Asked): Chosen[] {
  const { alarm, crew, escalation, elapsedMs } = state;
  if (alarm.priority === 'low') return ofService(alarm) ? managers(crew) : [];
  const onDuty = crew.people.filter((person) => person.isOnDuty).map((person): Chosen => ({ person, step: '' }));
  if (!isPressing(alarm.priority)) return onDuty;
  const others = crew.people.filter((person) => !person.isOnDuty);
  if (elapsedMs >= escalation.everyoneAfterMinutes * MINUTE_MS)
    return [...onDuty, ...others.map((person): Chosen => ({ person, step: 'all' }))];
  if (elapsedMs < escalation.nextAfterMinutes * MINUTE_MS) return onDuty;
  // Whoever was asked beside those on duty, and can still be told, is the next person already.
  const next = others.some((person) => isAsked(state, person)) ? undefined : others[0];
  return next === undefined ? onDuty : [...onDuty, { person: next, step: 'next' }];
}

function managers({ people }: Crew): Chosen[] {
  return people.filter(({ role }) => role === 'manager').map((person) => ({ person, step: '' }));
}

/** The service itself, watched by the same rules as a chamber. */
function ofService({ chamberId }: Alarm): boolean {
  return chamberId === 'takewell';
}

/** Whoever was told a whole pause ago, and not since the newest repeat was due. */
function repeatsDue(state: Asked): Telling[] {
  const { alarm, crew, escalation, asking, fromMs, elapsedMs } = state;
  const repeatMs = isPressing(alarm.priority) ? repeatDueMs(elapsedMs, escalation) : null;
  if (repeatMs === null) return [];
  const dueMs = fromMs + repeatMs;
  const isDue = (person: CrewMember) => {
    const times = state.asked.filter(({ personId }) => personId === person.id).map(({ decidedMs }) => decidedMs);
    const pauseMs = escalation.repeatMinutes * MINUTE_MS;
    return times.length > 0 && Math.min(...times) + pauseMs <= dueMs && Math.max(...times) < dueMs;
  };
  const step = askingStep('repeated', asking.sinceMs, dueMs.toString(36));
  return crew.people.filter(isDue).map((person) => ({ to: person, step }));
}

function isAsked({ asked }: Asked, { id }: CrewMember): boolean {
  return asked.some(({ personId }) => personId === id);
}
