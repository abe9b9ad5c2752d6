// Title and body of a notice: the title must be enough on a locked screen, the body says since when, where it is heading, who else knows and
// what to do first. In the words and the unit of whoever hears it.
import type { Alarm } from '../../shared/alarms/alarm.ts';
import { adviseOnAlarm, alarmParts } from '../../shared/alarms/say-alarm.ts';
import { saySpan } from '../../shared/say-span.ts';
import { sayNumber } from '../../shared/saying.ts';
import type { NoticeDraft, NoticeKind } from '../../shared/telling/notice.ts';
import { sayClock } from '../../shared/telling/say-clock.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import type { Trend } from './gather-trend.ts';
import { isToldLate } from './notice-age.ts';
import type { NoticeFacts } from './notice-message.ts';
import type { Occasion } from './occasion.ts';

/** Such as "▲ Chamber 2: hot 29.1 °C"; once over "▲ Chamber 2: heat is over"; once taken "▲ Chamber 2: Ben has it". */
export function sayTitle(kind: NoticeKind, facts: NoticeFacts, { nowMs, saying }: Occasion): string {
  const { alarm } = facts;
  const { notices } = saying.words;
  const { shape } = alarmParts(alarm, nowMs, saying);
  const chamber = nameChamber(facts, saying.words);
  if (kind === 'taken' && alarm.state === 'acknowledged')
    return `${shape} ${notices.tookIt(chamber, alarm.acknowledgedBy ?? notices.somebody)}`;
  return `${shape} ${chamber}: ${lowerFirst(shortOf(alarm, nowMs, saying))}`;
}

/** Lines: that it is told late, how it changed, how far and since when, where it is heading, where it is, what else is wrong there, who knows, what to do first. */
export function sayBody(notice: NoticeDraft, facts: NoticeFacts, occasion: Occasion): string {
  const { alarm } = facts;
  const lines = [
    [sayLate(notice.decidedMs, occasion)],
    [sayKind(notice.kind, alarm, occasion.saying.words), sayCourse(alarm, occasion), sayTrend(facts.trend, occasion)],
    sayWhere(facts, occasion.saying.words),
    [sayAlsoHere(facts, occasion)],
    [sayWho(facts, occasion)],
    [needsAct(alarm) ? occasion.saying.words.notices.first(adviseOnAlarm(alarm, occasion.saying)) : ''],
  ];
  return lines
    .map((parts) => parts.filter((part) => part !== '').join(' '))
    .filter((line) => line !== '')
    .join('\n');
}

export function nameChamber({ chamber }: Pick<NoticeFacts, 'chamber'>, { notices }: SharedWords): string {
  return chamber.name ?? notices.removedChamber;
}

function needsAct({ level, state }: Alarm): boolean {
  return level > 0 && state !== 'acknowledged';
}

function sayLate(decidedMs: number, { nowMs, zone, saying }: Occasion): string {
  if (!isToldLate(decidedMs, nowMs)) return '';
  const span = saySpan(nowMs - decidedMs, saying);
  return saying.words.notices.toldLate(sayClock(decidedMs, nowMs, zone, saying.words), span);
}

function sayKind(kind: NoticeKind, { level, state }: Alarm, { notices }: SharedWords): string {
  if (level === 0) return '';
  if (kind === 'escalated') return notices.escalated;
  // What was so when it was decided may be so no more.
  if (state !== 'unacknowledged') return '';
  if (kind === 'asked-anew') return notices.askedAnew;
  if (kind === 'passed-on') return notices.passedOn;
  return kind === 'repeated' ? notices.repeated : '';
}

function sayCourse(alarm: Alarm, { nowMs, zone, saying }: Occasion): string {
  const { notices } = saying.words;
  const { howFar } = alarmParts(alarm, nowMs, saying);
  const clock = (ms: number) => sayClock(ms, nowMs, zone, saying.words);
  if (alarm.level > 0)
    return howFar === ''
      ? notices.since(clock(alarm.sinceMs))
      : notices.farSince(upperFirst(howFar), clock(alarm.sinceMs));
  return `${upperFirst(howFar)}.${alarm.returnedMs === null ? '' : ` ${notices.overSince(clock(alarm.returnedMs))}`}`;
}

/** Slower than this, a minute, is neither rising nor falling: a sensor's own unrest. */
const STILL = { temperature: 0.05, humidity: 0.2 } as const;

function sayTrend(trend: Trend | null, { saying }: Occasion): string {
  if (trend === null) return '';
  const { notices } = saying.words;
  const { quantity, perMinute } = trend;
  if (Math.abs(perMinute) < STILL[quantity]) return notices.steady;
  return perMinute > 0 ? notices.rising(sayRate(trend, saying)) : notices.falling(sayRate(trend, saying));
}

function sayRate({ quantity, perMinute }: Trend, saying: Occasion['saying']): string {
  const rate = Math.abs(perMinute);
  if (quantity === 'humidity') return `${sayNumber(rate, 1, saying)} %`;
  // A difference has no zero to shift.
  const inUnit = saying.temperatureUnit === '°F' ? rate * 1.8 : rate;
  return `${sayNumber(inUnit, 1, saying)} ${saying.temperatureUnit}`;
}

function sayWhere({ probeName, batch }: NoticeFacts, { notices }: SharedWords): string[] {
  return [probeName === null ? '' : notices.probe(probeName), batch === null ? '' : notices.batch(batch.code)];
}

/** More would push what to do first off the screen of a phone. */
const ALSO_SAID = 3;

function sayAlsoHere({ alsoHere }: NoticeFacts, { nowMs, saying }: Occasion): string {
  if (alsoHere.length === 0) return '';
  const { notices } = saying.words;
  const said = alsoHere.slice(0, ALSO_SAID).map((alarm) => lowerFirst(shortOf(alarm, nowMs, saying)));
  return notices.alsoHere(said.join(', '), alsoHere.length - said.length);
}

/** What is so, without its colon: "hot 29.1 °C". */
function shortOf(alarm: Alarm, nowMs: number, saying: Occasion['saying']): string {
  return alarmParts(alarm, nowMs, saying).what.replace(': ', ' ');
}

function sayWho({ alarm, told }: NoticeFacts, { nowMs, zone, saying }: Occasion): string {
  const { notices } = saying.words;
  if (alarm.state === 'shelved') return notices.shelved;
  if (alarm.state !== 'acknowledged') return told.length === 0 ? '' : notices.alsoTold(told.join(', '));
  const who = alarm.acknowledgedBy ?? notices.somebody;
  if (alarm.acknowledgedMs === null) return notices.hasIt(who);
  return notices.hasItSince(who, sayClock(alarm.acknowledgedMs, nowMs, zone, saying.words));
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
