// One message for many alarms: that there are many, where, and that the list says the rest.
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import { SECOND_MS } from '../../shared/units.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import { isToldLate, NEWS_MS } from './notice-age.ts';
import { type NoticeMessage, spokenAt } from './notice-message.ts';
import type { Occasion } from './occasion.ts';

/** What stands at the moment of sending. */
export interface FloodFacts {
  readonly standing: number;
  readonly critical: number;
  /** Names of the chambers that they are in. */
  readonly chambers: readonly string[];
}

export const noFlood: FloodFacts = { standing: 0, critical: 0, chambers: [] };

/** It names no single alarm: `facts` is null, and a tap opens the list. */
export function buildFloodMessage(notice: NoticeDraft, flood: FloodFacts, occasion: Occasion): NoticeMessage {
  const { words } = occasion.saying;
  const say = words.notices.flood;
  const sentence = say.title(sayCount(flood, words));
  const where = flood.chambers.length === 0 ? '' : `${say.where(flood.chambers.join(', '))}\n`;
  return {
    noticeId: notice.id,
    kind: notice.kind,
    title: sentence,
    body: `${where}${say.advice}`,
    sentence,
    advice: say.advice,
    url: `${occasion.publicUrl}/alarms`,
    tag: 'flood',
    atMs: notice.decidedMs,
    toldLate: isToldLate(notice.decidedMs, occasion.nowMs),
    urgent: notice.urgent,
    ttlSeconds: Math.max(60, Math.ceil((notice.decidedMs + NEWS_MS - occasion.nowMs) / SECOND_MS)),
    acknowledge: null,
    ...spokenAt(occasion),
    facts: null,
  };
}

function sayCount({ standing, critical }: FloodFacts, { notices: { flood } }: SharedWords): string {
  return critical === 0 ? flood.standing(standing) : flood.standingCritical(standing, critical);
}
