// Title and body of a notice, from the alarm's own sentence: the title must be enough on a locked screen, the body says since when and what to do first.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { adviseOnAlarm, alarmParts } from '../../shared/alarms/say-alarm.ts';
import { plainEnglish } from '../../shared/saying.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { isToldLate } from './notice-age.ts';
import type { NoticeFacts, Saying } from './notice-message.ts';
import { sayClock, sayDuration } from './say-clock.ts';

/** Such as "▲ Chamber 2: hot 29.1 °C"; once over "▲ Chamber 2: heat is over". */
export function sayTitle({ alarm, chamber }: NoticeFacts, { nowMs }: Saying): string {
  const { shape, what } = alarmParts(alarm, nowMs, plainEnglish);
  return `${shape} ${chamber.name}: ${lowerFirst(what.replace(': ', ' '))}`;
}

/** Lines: that it is told late, how far and since when (or how long it lasted), where, who has it, what to do first. */
export function sayBody(notice: NoticeDraft, facts: NoticeFacts, saying: Saying): string {
  const lines = [
    sayLate(notice.decidedMs, saying),
    sayCourse(notice, facts.alarm, saying),
    sayWhere(facts),
    facts.alarm.level === 0 ? '' : `First: ${adviseOnAlarm(facts.alarm, plainEnglish)}`,
  ];
  return lines.filter((line) => line !== '').join('\n');
}

function sayLate(decidedMs: number, { nowMs, zone }: Saying): string {
  if (!isToldLate(decidedMs, nowMs)) return '';
  return `Told late: decided at ${sayClock(decidedMs, nowMs, zone)}, ${sayDuration(nowMs - decidedMs)} ago.`;
}

function sayCourse({ kind }: NoticeDraft, alarm: Alarm, { nowMs, zone }: Saying): string {
  const { howFar: rest } = alarmParts(alarm, nowMs, plainEnglish);
  const clock = (ms: number) => sayClock(ms, nowMs, zone);
  if (alarm.level === 0)
    return `${upperFirst(rest)}.${alarm.returnedMs === null ? '' : ` Over since ${clock(alarm.returnedMs)}.`}`;
  const course = `${rest === '' ? 'Since' : `${upperFirst(rest)}, since`} ${clock(alarm.sinceMs)}.`;
  return [sayKind(kind), course, sayState(alarm)].filter((one) => one !== '').join(' ');
}

const kindWords: Partial<Record<NoticeDraft['kind'], string>> = {
  escalated: 'It got worse.',
  'asked-anew': 'It was taken and stands still.',
  'passed-on': 'Nobody has taken it so far.',
  repeated: 'Nobody has taken it yet.',
};

function sayKind(kind: NoticeDraft['kind']): string {
  return kindWords[kind] ?? '';
}

function sayState({ state, acknowledgedBy }: Alarm): string {
  if (state === 'acknowledged') return `${acknowledgedBy ?? 'Somebody'} has it.`;
  return state === 'shelved' ? 'It is shelved.' : '';
}

function sayWhere({ probeName, batch }: NoticeFacts): string {
  const parts = [probeName === null ? '' : `Probe ${probeName}.`, batch === null ? '' : `Batch ${batch.code}.`];
  return parts.filter((part) => part !== '').join(' ');
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
