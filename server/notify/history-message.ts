// What could not be told for six hours, in one message: a line for each alarm, as it stands now. Old news one by one would only startle, and
// silence would hide that somebody was not reached.
import { createHash } from 'node:crypto';
import { alarmParts } from '../../shared/alarms/say-alarm.ts';
import { sayClock } from '../../shared/telling/say-clock.ts';
import { HOUR_MS, SECOND_MS } from '../../shared/units.ts';
import type { Notice } from '../store/store.ts';
import { type NoticeFacts, type NoticeMessage, spokenAt } from './notice-message.ts';
import type { Occasion } from './occasion.ts';
import { nameChamber } from './say-notice.ts';

const MOST_LINES = 6;

/** `alarms`: one entry for each alarm, the longest standing first; at least one. The same notices give the same id. */
export function buildHistoryMessage(
  notices: readonly Notice[],
  alarms: readonly NoticeFacts[],
  occasion: Occasion,
): NoticeMessage {
  const say = occasion.saying.words.notices.history;
  const lines = alarms.slice(0, MOST_LINES).map((facts) => sayLine(facts, occasion));
  if (alarms.length > MOST_LINES) lines.push(say.more(alarms.length - MOST_LINES));
  const title = say.title(alarms.length);
  return {
    noticeId: `history.${hashOf(notices)}`,
    kind: 'history',
    title,
    body: [...lines, say.advice].join('\n'),
    sentence: title,
    advice: say.advice,
    url: `${occasion.publicUrl}/alarms`,
    tag: 'history',
    atMs: Math.max(...notices.map(({ decidedMs }) => decidedMs)),
    toldLate: true,
    urgent: false,
    acknowledge: null,
    ...spokenAt(occasion),
    ttlSeconds: (24 * HOUR_MS) / SECOND_MS,
    facts: null,
  };
}

function sayLine(facts: NoticeFacts, { nowMs, zone, saying }: Occasion): string {
  const { what, howFar } = alarmParts(facts.alarm, nowMs, saying);
  const since = sayClock(facts.alarm.sinceMs, nowMs, zone, saying.words);
  return saying.words.notices.history.line(nameChamber(facts, saying.words), what, howFar, since);
}

function hashOf(notices: readonly Notice[]): string {
  const ids = notices.map(({ id }) => id).sort();
  return createHash('sha256').update(JSON.stringify(ids)).digest('hex').slice(0, 32);
}
