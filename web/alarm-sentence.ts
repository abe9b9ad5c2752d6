// An alarm in the reader's language and unit, said from its fields and without its shape, since the page draws its own.

import { instantRules } from '../shared/alarms/alarm.ts';
import { adviseOnAlarm, alarmParts, type SaidAlarm } from '../shared/alarms/say-alarm.ts';
import type { AlarmView } from '../shared/api/alarms.ts';
import { readFinding } from '../shared/finding.ts';
import { slowNowMs } from './clock.ts';
import { saying } from './saying.ts';

const numberAndUnit = /(\d) (°C|°F|%|kPa|min|h|u)(?!\w)/g;

const temperatureRules: ReadonlySet<string> = new Set<AlarmView['rule']>(['heat', 'cold', 'heat-ahead']);

/** True for alarms about temperature: their numbers are °C. */
export function isAboutTemperature(rule: string): boolean {
  return temperatureRules.has(rule);
}

/** What the alarm says, as it stands at `nowMs`. A number stays on the line of its unit. */
export function alarmSentence(alarm: AlarmView, nowMs = slowNowMs.value): string {
  const { what, howFar } = alarmParts(saidAlarm(alarm), nowMs, saying());
  const sentence = howFar === '' ? what : `${what}${alarm.level === 0 ? ': ' : ', '}${howFar}`;
  return sentence.replace(numberAndUnit, '$1\u00a0$2');
}

/** What to do first; '' when it is over, since there is nothing to do any more. */
export function alarmAdvice(alarm: AlarmView): string {
  const isOver = alarm.level === 0 && !instantRules.includes(alarm.rule);
  return isOver ? '' : adviseOnAlarm(saidAlarm(alarm), saying());
}

function saidAlarm(alarm: AlarmView): SaidAlarm {
  const { rule, level, limit, value, peak, since, returnedAt, about, expected, service } = alarm;
  return {
    ...{ rule, level, limit, value, peak, sinceMs: Date.parse(since), returnedMs: instant(returnedAt) },
    ...(about !== null && { about }),
    ...(expected !== null && { expected: instants(expected) }),
    ...(service !== null && { service: serviceFacts(service) }),
  };
}

function instants({ at, earliest, latest, passed }: NonNullable<AlarmView['expected']>) {
  return { atMs: instant(at), earliestMs: instant(earliest), latestMs: instant(latest), passedMs: instant(passed) };
}

function serviceFacts({
  trouble,
  finding,
  blind,
  outage,
}: NonNullable<AlarmView['service']>): NonNullable<SaidAlarm['service']> {
  return {
    ...(trouble !== null && { trouble: readFinding(finding, trouble, saying().words) }),
    blind,
    ...(outage !== null && { outage: { ...outage, fromMs: Date.parse(outage.from), toMs: Date.parse(outage.to) } }),
  };
}

function instant(at: string | null): number | null {
  return at === null ? null : Date.parse(at);
}
